import type { FillingTime } from '#contract';
import { mouldUse, type MouldUse, type ResolvedRun } from '../../input/resolve-run.js';
import { countsInside } from '../../input/pieces.js';
import { piecesOfStage } from '../../input/stage-pieces.js';
import type { AssessedRun } from '../../assessed-run.js';
import { isUntouched, troubledRuns, troublesOf, type Candidate, type Situation } from '../candidate.js';

/** Points for leaving out all pieces of a run; fewer in proportion. */
const ALL_PIECES = 12;

/** Makes fewer pieces: as many as the moulds hold or the batter surely leaves time for, else three quarters or half. */
export function makeFewer(situation: Situation): Candidate[] {
  return troubledRuns(situation)
    .filter(isUntouched)
    .flatMap((assessed) => {
      const { key, title, count, groups } = assessed.run.order;
      const least = groups?.length ?? 1;
      const fewer = new Set([
        ...fitting(assessed, situation),
        Math.floor(count * 0.75),
        Math.floor(count * 0.5),
      ]);
      return [...fewer]
        .filter((each) => each >= least && each < count)
        .map((each): Candidate => ({
          change: { kind: 'count', run: key, count: each },
          about: `count/${key}`,
          title: { code: 'remedy.make-fewer', run: title, before: count, after: each },
          asks: [
            {
              what: { code: 'disturbance.fewer-pieces', fewer: count - each },
              points: (ALL_PIECES * (count - each)) / count,
            },
          ],
          worse: [],
          also: [],
          cautions: [],
        }));
    });
}

/** The most pieces that fit where there is too little room or time for all. */
export function fitting(assessed: AssessedRun, situation: Situation): number[] {
  const { run } = assessed;
  const shown = situation.plan.document.runs.find((each) => each.run === run.order.key);
  return troublesOf(situation, assessed).flatMap(({ kind, resource, stages }) => {
    if (kind === 'pace') {
      return (shown?.filling ?? []).flatMap((time) =>
        stages.includes(time.stage) ? [ofAll(time, run)] : [],
      );
    }
    const mould = [...run.moulds.values()].find((each) => `mould:${each.key}` === resource);
    const use = mould === undefined ? undefined : mouldUse(run.design, mould.key);
    return mould === undefined || use === undefined ? [] : [mostIn(mould.cavities, use, run)];
  });
}

/** Pieces of the whole run when a stage surely gets through so many of its own. */
function ofAll({ stage, piecesSurely }: FillingTime, run: ResolvedRun): number {
  const found = run.stages.get(stage);
  const pieces = found === undefined ? 0 : piecesOfStage(run, found);
  return pieces === 0 ? piecesSurely : Math.floor((piecesSurely * run.order.count) / pieces);
}

/** Pieces that cavities surely hold: of each kind the last cavity may be all but empty. */
function mostIn(cavities: number, use: MouldUse, { order, design }: ResolvedRun): number {
  const { piecesPerCavity, cavitiesPerPiece } = use;
  const kinds = countsInside(order, design, use.parts).length;
  return (
    Math.floor(cavities / cavitiesPerPiece) * piecesPerCavity - Math.max(0, kinds - 1) * (piecesPerCavity - 1)
  );
}
