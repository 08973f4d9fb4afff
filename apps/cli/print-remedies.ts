import type { PlanWithRemedies, Remedy } from '#contract';
import type { Texts } from '#words';
import { cautionsOf } from './print-plan.js';
import { cautionsSection, wrap } from './text-layout.js';
import { printed } from './words/index.js';

const WIDTH = 100;

/** What would help a plan: each change with what it makes better and worse, and cautions that the plan itself lacks. */
export function printRemedies(
  { plan, remedies: { remedies, notes } }: PlanWithRemedies,
  texts: Texts,
): string {
  const shown = new Set(cautionsOf(plan).map(({ code }) => code));
  const cautions = remedies.flatMap((each) => each.cautions).filter(({ code }) => !shown.has(code));
  const sections = [
    [
      printed[texts.language].plan.remedies,
      ...remedies.map((remedy, place) => remedyLines(remedy, place, texts)),
      ...notes.map((note) => wrap(texts.of(note), 2, WIDTH)),
    ].join('\n'),
    cautionsSection(cautions, texts),
  ];
  return `${sections.filter((section) => section !== '').join('\n\n')}\n`;
}

function remedyLines({ title, does, worse, also }: Remedy, place: number, texts: Texts): string {
  const words = printed[texts.language].plan;
  return [
    wrap(`${String(place + 1)}. ${texts.of(title)}`, 2, WIDTH, 3),
    wrap(does.map((gain) => texts.of(gain)).join(' '), 5, WIDTH),
    ...(worse.length === 0 ? [wrap(words.nothingWorse, 5, WIDTH)] : []),
    ...worse.map((loss) => wrap(words.worse(texts.of(loss)), 5, WIDTH, 2)),
    ...also.map((change) => wrap(words.also(texts.of(change)), 5, WIDTH, 2)),
  ].join('\n');
}
