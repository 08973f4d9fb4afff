import { curveRows } from '#clocks';
import type { ClocksDocument } from '#contract';
import { wholeDegrees, type Texts } from '#words';
import { columns, sentences, wrap } from './text-layout.js';
import { printed } from './words/index.js';

type Part = ClocksDocument['runs'][number]['parts'][number];

/** Narrow enough for any window. */
const WIDTH = 80;

/**
 * What a part does by its own heat, in sentences and as a small table of its curve; nothing for what is not cast.
 * @param before the parts told already: what one of them has told is not told again
 */
export function heatText({ heat }: Part, before: readonly Part[], texts: Texts): string[] {
  if (heat === null) return [];
  const words = printed[texts.language].clocks.heat;
  const same = before.find((other) => JSON.stringify(other.heat) === JSON.stringify(heat));
  if (same !== undefined) return [wrap(words.sameAs(texts.quoted(same.title)), 2, WIDTH)];
  const degrees = (celsius: number): string => wholeDegrees(celsius, texts);
  const lastMin = heat.curve.at(-1)?.min;
  const rows = curveRows(heat.curve, heat.hottestMin).map(({ min, middleC, edgeC }) => [
    texts.duration(min, lastMin),
    degrees(middleC),
    degrees(edgeC),
  ]);
  return [
    wrap(sentences(heat.notes, texts), 2, WIDTH),
    ...columns([[words.after, words.middle, words.edge], ...rows]).map((line) => `    ${line}`),
  ];
}
