import type { Candidate, Situation } from '../candidate.js';

/** A second set of the mould that is too small or wanted twice at a time. */
export function ownMoreCavities({ input, plan, troubles }: Situation): Candidate[] {
  const { holds, resources } = plan.solved.problem;
  return input.moulds.flatMap((mould): Candidate[] => {
    const resource = `mould:${mould.key}`;
    const amounts = holds.filter((hold) => hold.resource === resource).map(({ amount }) => amount);
    const busy = resources.find(({ id }) => id === resource)?.busy ?? [];
    const lacking = troubles.some((trouble) => trouble.resource === resource);
    if (amounts.length === 0 || (!lacking && amounts.length + busy.length < 2)) return [];
    const sets = Math.max(2, Math.ceil(Math.max(...amounts) / mould.cavities));
    const cavities = mould.cavities * sets;
    return [
      {
        change: { kind: 'cavities', mould: mould.key, cavities },
        about: `cavities/${mould.key}`,
        title: { code: 'remedy.buy-moulds', mould: mould.title, before: mould.cavities, after: cavities },
        asks: [{ what: { code: 'disturbance.moulds' }, points: 3 * (sets - 1) }],
        worse: [{ code: 'remedy.price-of-moulds' }],
        also: [],
        cautions: [],
      },
    ];
  });
}
