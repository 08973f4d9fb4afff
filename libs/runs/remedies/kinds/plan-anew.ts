import type { Candidate, Situation } from '../candidate.js';

/** Plans without holding on to the plan before: other remedies are planned so too, and are to be worth more. */
export function planAnew({ options }: Situation): Candidate[] {
  if (options.previous === undefined) return [];
  return [
    {
      change: { kind: 'plan-anew' },
      about: 'plan-anew',
      title: { code: 'remedy.plan-anew' },
      asks: [],
      worse: [],
      also: [],
      cautions: [],
    },
  ];
}
