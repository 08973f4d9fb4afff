import type { StartReason } from '#contract';
import type { MessageWords } from '../words.js';

export const startReasons: MessageWords<StartReason> = {
  'start.by': ({ at }, texts) => `Begin ${texts.dayTime(at)} at the latest.`,
  'start.odds-fall': ({ at, probability }, texts) =>
    `Begun ${texts.dayTime(at)}, the odds fall to ${texts.odds(probability)}.`,
  'start.no-plan-after': ({ at }, texts) => `Begun ${texts.dayTime(at)}, there is no plan any more.`,
  'start.costs-more': ({ because }, texts) => `What costs more then: ${texts.of(because)}`,
  'start.out-of-reach': ({ wanted, best, at }, texts) =>
    `No start has odds of ${texts.share(wanted)}. The best are ${texts.odds(best)}, begun ${texts.dayTime(at)}.`,
  'start.loses': ({ probability, because }, texts) =>
    `Lost there, ${texts.odds(probability)}: ${texts.of(because)}`,
  'start.batter-limits': ({ probability }, texts) =>
    `The batter alone leaves odds of ${texts.odds(probability)}, whenever you begin.`,
  'start.nothing-exceeds': ({ probability }, texts) =>
    `Even if you knew beforehand what the soap does, no plan would do better than ${texts.odds(probability)}.`,
  'start.earlier-is-no-better': () =>
    'An earlier start does not help: a whole week of starts was tried, and the day no longer matters then.',
  'start.no-plan': () => 'There is no plan, whenever you begin.',
  'start.undecided': () => 'No plan was found, and none was ruled out.',
  'start.no-time': () => 'There was no time left to find it.',
  'start.day-impossible': ({ day }, texts) =>
    `It cannot be cured by ${texts.calendarDay(day)}, even if you begin at once.`,
};
