import type { HeatNote } from '#contract';
import { degreesBand, wholeDegrees } from '../format/degrees.js';
import type { MessageWords, Texts } from '../words.js';

/** Wie sie steht, und was dafür zu tun ist. */
const kept = {
  open: ['offen', 'Lassen Sie sie offen'],
  covered: ['abgedeckt', 'Decken Sie sie ab'],
  wrapped: ['abgedeckt und in Handtücher gewickelt', 'Wickeln Sie sie in Handtücher'],
  chilled: ['im Kühlschrank', 'Stellen Sie sie in den Kühlschrank'],
} as const;

/** Was die eigene Wärme mit einem gegossenen Teil macht. */
export const heat: MessageWords<HeatNote> = {
  'heat.gel': (chances, texts) => `Sie ${gelText(chances, texts)}`,
  'heat.gel-asked': ({ asked, ...chances }, texts) =>
    `Sie wollen ${asked === 'full' ? 'die Gelphase' : 'keine Gelphase'}. So, wie es geplant ist, gilt: Die Seife ${gelText(chances, texts)}`,
  'heat.hottest': ({ hottestC, min }, texts) =>
    `Ihre Mitte ist etwa ${texts.duration(min)} nach dem Gießen am heißesten: ${degreesBand(hottestC, texts)}.`,
  'heat.only-cools': ({ fromC }, texts) => `Sie kühlt nur ab, von ${wholeDegrees(fromC, texts)} an.`,
  'heat.cooled': ({ min, belowC }, texts) =>
    `Etwa ${texts.duration(min)} nach dem Gießen hat ihre Mitte weniger als ${wholeDegrees(belowC, texts)}.`,
  'heat.overheats': ({ chance }, texts) =>
    `Sie kann überhitzen, reißen oder aufsteigen: ${texts.odds(chance)}. Sehen Sie nach ihr, solange sie am heißesten ist.`,
  'heat.kept': ({ kept: way, isTold }) =>
    isTold
      ? `Sie steht ${kept[way][0]}.`
      : `Angenommen: Sie steht ${kept[way][0]}. Das Teil eines Entwurfs kann es anders sagen.`,
  'heat.kept-else': ({ kept: way, towards, chance }, texts) =>
    `${kept[way][1]}, dann ${goals[towards]}: ${texts.odds(chance)}.`,
  'heat.pour': ({ warmer }) =>
    warmer ? 'Damit sie geliert, gießen Sie wärmer.' : 'Damit sie kühler bleibt, gießen Sie kühler.',
};

const goals = {
  gel: 'geliert sie ganz',
  'no-gel': 'geliert sie nicht',
  'no-overheating': 'überhitzt sie nicht',
} as const;

/** Was sicherer ist, steht allein. */
const SURE = 0.94;

function gelText(
  { whole, part, none }: { readonly whole: number; readonly part: number; readonly none: number },
  { odds }: Texts,
): string {
  if (whole > SURE) return `geliert ganz: ${odds(whole)}.`;
  if (part > SURE) return `geliert nur in der Mitte: ${odds(part)}.`;
  if (none > SURE) return `geliert nicht: ${odds(none)}.`;
  return `geliert ganz (${odds(whole)}), nur in der Mitte (${odds(part)}) oder gar nicht (${odds(none)}).`;
}
