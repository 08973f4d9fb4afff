import type { StageForecast } from '#contract';
import { bearerOf, untilOf, type Texts } from '#words';
import type { DotsWords } from '../en/dots.js';

export const dots: DotsWords = {
  opens: ({ part, state }: Pick<StageForecast, 'part' | 'state'>, texts: Texts) =>
    `${bearerOf(part, state, texts)} ist ${texts.names.states[state].is}`,
  closes: ({ part, state }: Pick<StageForecast, 'part' | 'state'>, texts: Texts) =>
    `${bearerOf(part, state, texts)} bleibt ${untilOf(state, texts)}`,
  byPlan: (count, all, when) => `${count} von ${all} bis ${when}, wie geplant.`,
  stillAtPlan: (count, all, when) => `${when}, wie geplant: bei ${count} von ${all} noch so.`,
  byNow: (count, all) => `${count} von ${all} bis jetzt.`,
  by: (count, all, when) => `${count} von ${all} bis ${when}`,
  over: (count, all, when) => `bei ${count} von ${all} vorbei bis ${when}`,
  each: (all) => `Jeder Punkt ist einer von ${all} gleich wahrscheinlichen Zeitpunkten.`,
  full: 'rechtzeitig für den Plan',
  hollow: 'zu spät für den Plan',
  hours: 'Ihre Zeiten',
  planned: 'geplant',
  now: 'jetzt',
};
