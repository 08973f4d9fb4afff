import fc from 'fast-check';
import { expect, it } from 'vitest';
import { controllability, schedule, type Length, type Precedence, type Problem } from '#planner';
import { carryOut } from '../../../tests/support/carry-out.js';
import { layeredProblem, uncertainProblem } from '../../../tests/support/uncertain-problem.js';
import { guarantee } from './guarantee.js';
import { linkedNetwork, looseNetwork, type PlanNetwork } from './plan-network.js';

it('can be carried out whatever the soap does within its bands, where lengths share draws', () => {
  const seen = { loose: 0, linked: 0 };
  const problems = fc.oneof(
    uncertainProblem({ stages: 4, until: 60, medians: { min: 6, max: 20 }, draws: ['x', 'y'] }),
    layeredProblem('x'),
  );
  const inBand = fc.constantFrom(-1, -0.5, 0, 0.5, 1);
  fc.assert(
    fc.property(problems, fc.record({ x: inBand, y: inBand }), (p, speeds) => {
      const outcome = schedule(p, { certainty: 0.5, seed: 1 });
      if (outcome.status !== 'planned' || !guarantee(p, outcome.schedule).holds) return;
      const loose = looseNetwork(p, outcome.schedule, 0.9);
      const isLoose = controllability(loose).controllable;
      const net = isLoose ? loose : linkedNetwork(p, outcome.schedule, 0.9);
      // 1.2815 is just within the 10th and the 90th percentile of the standard normal.
      const draws = { x: 1.2815 * speeds.x, y: 1.2815 * speeds.y };
      const starts = carryOut(net, p.stages.length, p.until, (c, begun) => comesAt(p, net, c, begun, draws));
      const faults = faultsOf(p, outcome.schedule.precedences, starts, draws);
      expect(faults).toEqual([]);
      seen[isLoose ? 'loose' : 'linked']++;
    }),
    { seed: 34, numRuns: 400 },
  );
  expect(Math.min(seen.loose, seen.linked)).toBeGreaterThan(20);
});

/** What a length comes to at a draw, in minutes. */
function minutesAt(length: Length, draws: Readonly<Record<string, number>>): number {
  return length.kind === 'known'
    ? length.minutes
    : length.median * Math.exp(length.sigma * draws[length.draw]!);
}

/** The whole minute at which the state at the end of a contingent link shows. */
function comesAt(
  p: Problem,
  net: PlanNetwork,
  c: number,
  starts: readonly (number | null)[],
  draws: Readonly<Record<string, number>>,
): number {
  const { tag } = net.requirements.find(({ from }) => from === net.contingents[c]!.to)!;
  const lag = p.lags.find(({ id }) => tag !== null && 'lag' in tag && tag.lag === id)!;
  const from = p.stages.findIndex(({ id }) => id === lag.from);
  const since = starts[from]! + (lag.point === 'end' ? p.stages[from]!.duration : 0);
  return Math.ceil(since + minutesAt(lag.atLeast!, draws));
}

/** What starts have missed, by the doc comments of the problem. */
function faultsOf(
  p: Problem,
  order: readonly Precedence[],
  starts: readonly (number | null)[],
  draws: Readonly<Record<string, number>>,
): string[] {
  const start = (id: string): number => starts[p.stages.findIndex((stage) => stage.id === id)] ?? NaN;
  const end = (id: string): number => start(id) + p.stages.find((stage) => stage.id === id)!.duration;
  const met = (yes: boolean, what: string): string[] => (yes ? [] : [what]);
  return [
    ...p.lags.flatMap((lag) => {
      const since = lag.point === 'end' ? end(lag.from) : start(lag.from);
      const done = lag.until === 'end' ? end(lag.to) : start(lag.to);
      return [
        ...met(
          lag.atLeast === undefined || start(lag.to) >= since + minutesAt(lag.atLeast, draws),
          `${lag.id} opens`,
        ),
        // A state that shows within a minute is seen at the end of it, so a closing told from it may be off by that.
        ...met(
          lag.atMost === undefined || done < since + minutesAt(lag.atMost, draws) + 1,
          `${lag.id} closes`,
        ),
      ];
    }),
    ...order.flatMap(({ before, after }) => met(end(before) <= start(after), `${before} before ${after}`)),
    ...p.stages.flatMap(({ id, earliest = 0, latest = p.until }) =>
      met(start(id) >= earliest && start(id) <= Math.min(latest, p.until), `${id} has its place`),
    ),
  ];
}
