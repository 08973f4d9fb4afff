import type { StageForecast } from '#contract';
import { bearerOf, untilOf, type Texts } from '#words';

/** Forecasts as twenty dots. Fetched with the first that is shown. */
export const dots = {
  /** What comes at the times, as a title. */
  opens: ({ part, state }: Pick<StageForecast, 'part' | 'state'>, texts: Texts) =>
    `${bearerOf(part, state, texts)} is ${texts.names.states[state].is}`,
  closes: ({ part, state }: Pick<StageForecast, 'part' | 'state'>, texts: Texts) =>
    `${bearerOf(part, state, texts)} stays ${untilOf(state, texts)}`,
  byPlan: (count: number, all: number, when: string) => `${count} of ${all} by ${when}, as planned.`,
  stillAtPlan: (count: number, all: number, when: string) =>
    `Still so in ${count} of ${all} at ${when}, as planned.`,
  byNow: (count: number, all: number) => `${count} of ${all} by now.`,
  by: (count: number, all: number, when: string) => `${count} of ${all} by ${when}`,
  over: (count: number, all: number, when: string) => `over in ${count} of ${all} by ${when}`,
  each: (all: number) => `Each dot is one of ${all} equally likely times.`,
  full: 'in time for the plan',
  hollow: 'too late for the plan',
  hours: 'your hours',
  planned: 'planned',
  now: 'now',
};

export type DotsWords = typeof dots;
