import { stretches, workingTime } from '#clocks';
import type { FillingTime, Risk } from '#contract';
import { makingAttempt, type AssessedRun } from '../assessed-run.js';
import { handsOnOf, stageKindFacts } from '../input/stage-kinds.js';
import { processOf } from '../input/stage-order.js';

/** Below this chance the maker is told. */
const SURE = 0.9;

/** Whether each part that is poured, layered, dipped or piped piece by piece can be done before its batter is too stiff. */
export function fillingTimes(assessed: AssessedRun): FillingTime[] {
  return assessed.run.design.parts.flatMap((part) => {
    const attempt = makingAttempt(assessed, part.key);
    const way = attempt === undefined ? undefined : stageKindFacts[attempt.stage.kind].fills;
    if (attempt === undefined || way === undefined) return [];
    // What was cooked is spooned while it is hot, for which the plan has a window.
    if (processOf(assessed.run.design, part.key) !== 'cold') return [];
    const { perPieceS } = handsOnOf(attempt.stage);
    if (perPieceS === 0) return [];
    const { start: startState, end: endState } = stretches[way];
    const clocks = assessed.clocks.get(part.key);
    const start = clocks?.get(startState);
    const end = clocks?.get(endState);
    if (start === undefined || end === undefined) return [];
    const { key } = attempt.stage;
    const time = workingTime(way, { start, end }, perPieceS, attempt.count);
    return [
      {
        part: part.key,
        stage: key,
        start: startState,
        end: endState,
        neededMin: (perPieceS * attempt.count) / 60,
        ...time,
      },
    ];
  });
}

/** The risk of not getting all pieces done. */
export function fillingRisk(time: FillingTime, count: number): Risk[] {
  const { chance, neededMin, stretchMin, start, end, piecesSurely, batches } = time;
  if (chance >= SURE) return [];
  const level = chance < 0.5 ? 'high' : 'medium';
  const figures = { count, neededMin, stretchMin, start, end, chance, piecesSurely, batches };
  return [{ code: 'batter.pace', level, ...figures }];
}
