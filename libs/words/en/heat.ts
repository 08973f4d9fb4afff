import type { HeatNote } from '#contract';
import { degreesBand, wholeDegrees } from '../format/degrees.js';
import type { MessageWords, Texts } from '../words.js';

/** How it stands, and how to make it. */
const kept = {
  open: ['open', 'Leave it open'],
  covered: ['covered', 'Cover it'],
  wrapped: ['covered and wrapped in towels', 'Wrap it in towels'],
  chilled: ['in the refrigerator', 'Set it in the refrigerator'],
} as const;

/** What a poured part does by its own heat. */
export const heat: MessageWords<HeatNote> = {
  'heat.gel': (chances, texts) => gelText(chances, texts),
  'heat.gel-asked': ({ asked, ...chances }, texts) =>
    `You want ${asked === 'full' ? 'gel' : 'no gel'}. At these settings: ${uncapitalised(gelText(chances, texts))}`,
  'heat.hottest': ({ hottestC, min }, texts) =>
    `Its middle is hottest about ${texts.duration(min)} after the pour: ${degreesBand(hottestC, texts)}.`,
  'heat.only-cools': ({ fromC }, texts) => `It only cools, from ${wholeDegrees(fromC, texts)}.`,
  'heat.cooled': ({ min, belowC }, texts) =>
    `Its middle is below ${wholeDegrees(belowC, texts)} about ${texts.duration(min)} after the pour.`,
  'heat.overheats': ({ chance }, texts) =>
    `It may overheat, crack or rise: ${texts.odds(chance)}. Look at it while it is hottest.`,
  'heat.kept': ({ kept: way, isTold }) =>
    isTold
      ? `It stands ${kept[way][0]}.`
      : `Assumed: it stands ${kept[way][0]}. The part of a design can say otherwise.`,
  'heat.kept-else': ({ kept: way, towards, chance }, texts) =>
    `${kept[way][1]}, and ${goals[towards]}: ${texts.odds(chance)}.`,
  'heat.pour': ({ warmer }) => (warmer ? 'To gel it, pour it warmer.' : 'To keep it cooler, pour it cooler.'),
};

const goals = {
  gel: 'it gels wholly',
  'no-gel': 'it does not gel',
  'no-overheating': 'it does not overheat',
} as const;

/** Surer than this the other outcomes are left out. */
const SURE = 0.94;

function gelText(
  { whole, part, none }: { readonly whole: number; readonly part: number; readonly none: number },
  { odds }: Texts,
): string {
  if (whole > SURE) return `It gels wholly: ${odds(whole)}.`;
  if (part > SURE) return `It gels in its middle only: ${odds(part)}.`;
  if (none > SURE) return `It does not gel: ${odds(none)}.`;
  return `It gels wholly (${odds(whole)}), in its middle only (${odds(part)}) or not at all (${odds(none)}).`;
}

function uncapitalised(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
