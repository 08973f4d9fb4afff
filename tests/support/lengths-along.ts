import type { Side, Stnu } from '#planner';

/**
 * The sum of the lengths along a cycle of a network with uncertainty, and for each point how often the cycle leaves it
 * more than it enters it: 0 everywhere when it closes.
 */
export function lengthsAlong(
  { points, requirements, contingents }: Stnu,
  cycle: readonly (Side & { readonly times: number })[],
): { readonly sum: number; readonly surplus: readonly number[] } {
  let sum = 0;
  const surplus = Array.from({ length: points }, () => 0);
  for (const { kind, index, bound, times } of cycle) {
    const link = (kind === 'requirement' ? requirements : contingents)[index]!;
    const forwards = (kind === 'requirement') === (bound === 'max');
    sum += times * (forwards ? link[bound]! : -link[bound]!);
    const [leaves, enters] = forwards ? [link.from, link.to] : [link.to, link.from];
    surplus[leaves]! += times;
    surplus[enters]! -= times;
  }
  return { sum, surplus };
}
