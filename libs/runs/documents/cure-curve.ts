import type { CureFit } from '#clocks';
import type { CureCurve } from '#contract';
import { failed, isoInstant, minute, ok, type Result } from '#units';
import type { RunsInput } from '../input/input.js';
import type { AssessedRun } from '../assessed-run.js';
import { assessRuns } from '../assess-runs.js';
import { cureStart, lotWeighings } from '../observed/lot-weighings.js';

/** Points of the curve. A lot loses most at first, so they stand closer there. */
const POINTS = 40;
/** A week is what the cure rule looks at, so the curve goes on for one after the lot is ready. */
const DAYS_AFTER = 7;
/** Longer than any cure; a fit of hardly any loss can put the ready day beyond all measure. */
const MOST_DAYS = 200;

/**
 * How the one run of the input cures by the scales: each weighing, and the mass that they lead to expect.
 * @returns issues as `assessRuns`
 */
export function cureCurve(input: RunsInput): Result<CureCurve> {
  const taken = assessRuns(input);
  if (!taken.ok) return taken;
  const [run] = taken.value;
  if (run === undefined) {
    return failed({ code: 'input.no-run', path: ['runs'] });
  }
  return ok(curveOf(run.assessed));
}

function curveOf(assessed: AssessedRun): CureCurve {
  const start = cureStart(assessed);
  const weighings = lotWeighings(assessed);
  const { told, ready, fit } = assessed.scales;
  const last = Math.max(0, told.readyDays?.high ?? 0, ...weighings.map(({ days }) => days));
  return {
    startedAt: start === undefined ? null : isoInstant(minute(start)),
    cure: told,
    byWeight: ready !== undefined,
    readings: weighings.map(({ days, massG, counts, from }) => ({
      entry: from.entry,
      at: isoInstant(from.at),
      days,
      pieces: from.pieces,
      massG: from.massG,
      pieceG: massG,
      counts,
    })),
    curve: fit === undefined ? [] : pointsOf(fit, Math.min(MOST_DAYS, last + DAYS_AFTER)),
  };
}

function pointsOf(fit: CureFit, untilDays: number): CureCurve['curve'] {
  return Array.from({ length: POINTS + 1 }, (_, i) => {
    const days = untilDays * (i / POINTS) ** 2;
    return { days, pieceG: fit.massAt(days) };
  });
}
