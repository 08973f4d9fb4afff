import type { AmountsDocument } from '#contract';
import { ingredientsText, type Texts } from '#words';
import { wrap } from './text-layout.js';
import { printed } from './words/index.js';

const WIDTH = 100;

/** The lists of ingredients for labels, of each part that is mixed from a recipe. */
export function labelsSection(labels: AmountsDocument['runs'][number]['labels'], texts: Texts): string {
  if (labels.length === 0) return '';
  const words = printed[texts.language].sheet;
  return [
    words.labels,
    wrap(words.labelsHow, 2, WIDTH),
    ...labels.flatMap((label) => [
      `  ${label.title}:`,
      wrap(`${words.asPutIn}: ${ingredientsText(label.asPutIn, label, texts)}.`, 4, WIDTH, 2),
      wrap(`${words.asSoap}: ${ingredientsText(label.asSoap, label, texts)}.`, 4, WIDTH, 2),
      ...(label.unknownAllergens.length === 0
        ? []
        : [
            wrap(
              printed[texts.language].plan.allergensUnknown(
                texts.and(label.unknownAllergens.map(texts.quoted)),
              ),
              4,
              WIDTH,
            ),
          ]),
    ]),
  ].join('\n');
}
