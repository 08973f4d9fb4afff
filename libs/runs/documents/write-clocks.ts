import { sensitivity } from '#clocks';
import type { ClockMove, ClocksDocument } from '#contract';
import { ok, type Result } from '#units';
import { fillingTimes } from '../clocks/filling-time.js';
import { potashOf } from '../clocks/forecast-clocks.js';
import { inputsFor } from '../clocks/part-inputs.js';
import { presentHeat } from '../clocks/present-heat.js';
import type { RunsInput } from '../input/input.js';
import { allClocks } from '../observed/show-clocks.js';
import { presentRecord } from './workshop-lessons.js';
import { presentLessons, presentOnlyDone } from './present-lessons.js';
import { assessRuns, type SizedRun } from '../assess-runs.js';
import { comesInto } from '../input/states-of-parts.js';

/** How many of the quantities that move a state most are told. */
const TOLD_MOVES = 12;

/**
 * Every clock of every part of the runs, with its reasons, what the log has seen and taught, whether the pieces can be
 * filled in time, and which quantity moves which state most.
 * @param withRecord tells how past forecasts came true too, which takes a while
 */
export function writeClocks(
  input: RunsInput,
  { withRecord = false }: { readonly withRecord?: boolean } = {},
): Result<ClocksDocument> {
  const taken = assessRuns(input);
  if (!taken.ok) return taken;
  return ok({
    schema: 'benchtide.clocks/2',
    runs: taken.value.map((run) => clocksOfRun(run, input, withRecord)),
  });
}

function clocksOfRun(
  sized: SizedRun,
  { workshop }: RunsInput,
  withRecord: boolean,
): ClocksDocument['runs'][number] {
  const { assessed, amounts, learned, teachings } = sized;
  const { run } = assessed;
  const clocks = allClocks(assessed);
  const filling = fillingTimes(assessed);
  return {
    run: run.order.key,
    title: run.order.title,
    parts: run.design.parts.flatMap((part) => {
      if (part.kind === 'decor') return [];
      return [
        {
          part: part.key,
          title: part.title,
          clocks: clocks.filter(
            (clock) => clock.part === part.key && comesInto(run.design, part, clock.state),
          ),
          filling: filling.find((time) => time.part === part.key) ?? null,
          moves:
            part.kind === 'batch' && potashOf(part, run) === undefined
              ? movesOf(sensitivity(inputsFor(part, run, workshop))).filter((move) =>
                  comesInto(run.design, part, move.state),
                )
              : [],
          heat: part.kind === 'batch' ? presentHeat(part, run, workshop) : null,
          risks: amounts.find((each) => each.part === part.key)?.risks ?? [],
        },
      ];
    }),
    cure: assessed.scales.told,
    lessons: presentLessons(learned, teachings, run),
    ...presentOnlyDone(learned),
    ...(withRecord && presentRecord(teachings)),
  };
}

function movesOf(states: ReturnType<typeof sensitivity>): ClockMove[] {
  return states.flatMap(({ state, moves }) =>
    moves.slice(0, TOLD_MOVES).map((move): ClockMove => ({ code: 'clock.move', state, ...move })),
  );
}
