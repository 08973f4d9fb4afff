import type { StartReason } from '#contract';
import type { MessageWords } from '../words.js';

export const startReasons: MessageWords<StartReason> = {
  'start.by': ({ at }, texts) => `Beginnen Sie spätestens ${texts.dayTime(at)}.`,
  'start.odds-fall': ({ at, probability }, texts) =>
    `Beginnen Sie erst ${texts.dayTime(at)}, sinkt die Chance auf ${texts.odds(probability)}.`,
  'start.no-plan-after': ({ at }, texts) =>
    `Beginnen Sie erst ${texts.dayTime(at)}, gibt es keinen Plan mehr.`,
  'start.costs-more': ({ because }, texts) => `Was dann mehr kostet: ${texts.of(because)}`,
  'start.out-of-reach': ({ wanted, best, at }, texts) =>
    `Kein Beginn hat eine Chance von ${texts.share(wanted)}. Die beste ist ${texts.odds(best)}, begonnen ${texts.dayTime(at)}.`,
  'start.loses': ({ probability, because }, texts) =>
    `Daran scheitern ${texts.odds(probability)}: ${texts.of(because)}`,
  'start.batter-limits': ({ probability }, texts) =>
    `Allein der Leim lässt nur eine Chance von ${texts.odds(probability)}, wann Sie auch beginnen.`,
  'start.nothing-exceeds': ({ probability }, texts) =>
    `Selbst wenn Sie vorher wüssten, was die Seife tut, käme kein Plan über ${texts.odds(probability)}.`,
  'start.earlier-is-no-better': () =>
    'Früher zu beginnen hilft nicht: Eine ganze Woche wurde probiert, und der Tag spielt dann keine Rolle mehr.',
  'start.no-plan': () => 'Es gibt keinen Plan, wann Sie auch beginnen.',
  'start.undecided': () => 'Es fand sich kein Plan, und keiner ließ sich ausschließen.',
  'start.no-time': () => 'Die Zeit reichte nicht, um ihn zu finden.',
  'start.day-impossible': ({ day }, texts) =>
    `Bis ${texts.calendarDay(day)} wird das nicht reif, auch wenn Sie sofort beginnen.`,
};
