import { withoutPieces, withPieces } from '../../input/pieces.js';
import { isUntouched, troubledRuns, troublesOf, type Candidate, type Situation } from '../candidate.js';
import { fitting } from './count.js';

/** Troubles that smaller batches can help. */
const tooMuch: ReadonlySet<string> = new Set(['pace', 'scarce', 'resource', 'calendar', 'unknown']);

/**
 * Makes a run in two, each with batches of its own. A design makes each part in one batch, so two batches of a part
 * are two runs.
 */
export function splitRun(situation: Situation): Candidate[] {
  const taken = new Set(situation.input.runs.map(({ key }) => key));
  return troubledRuns(situation)
    .filter(
      (assessed) =>
        isUntouched(assessed) && troublesOf(situation, assessed).some(({ kind }) => tooMuch.has(kind)),
    )
    .flatMap((assessed) => {
      const { order } = assessed.run;
      const key = `${order.key.slice(0, 35)}-rest`;
      const half = Math.ceil(order.count / 2);
      const most = Math.max(half, ...fitting(assessed, situation).filter((each) => each < order.count));
      if (order.count < 2 * (order.groups?.length ?? 1) || taken.has(key)) return [];
      return [...new Set([half, most])]
        .filter((each) => each >= (order.groups?.length ?? 1))
        .map((count): Candidate => {
          const rest = withoutPieces(order, withPieces(order, count));
          return {
            change: {
              kind: 'split',
              run: order.key,
              count,
              rest: { ...rest, key, title: `${order.title.slice(0, 112)}, rest` },
            },
            about: `split/${order.key}`,
            title: { code: 'remedy.split', run: order.title, first: count, rest: rest.count },
            asks: [{ what: { code: 'disturbance.batches-twice' }, points: 2 }],
            worse: [{ code: 'remedy.mixed-twice' }],
            also: [],
            cautions: ['caution.lye'],
          };
        });
    });
}
