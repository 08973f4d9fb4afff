import { sensitivity, type Move } from '#clocks';
import type { ClockMove, ClocksDocument, SoapState, StageKind } from '#contract';
import { ok, type Result } from '#units';
import { cureByWeight } from './cure-by-weight.js';
import { fillingTimes } from './filling-time.js';
import { inputsFor } from './forecast-clocks.js';
import type { RunsInput } from '../input/input.js';
import { allClocks } from './show-clocks.js';
import { showLessons } from './show-lessons.js';
import { takeInHand, type SizedRun } from '../take-in-hand.js';
import { makingStage, type RunWorkings } from '../input/workings.js';

/** How many of the quantities that move a state most are told. */
const TOLD_MOVES = 3;

/**
 * Every clock of every part of the runs, with its reasons, what the log has seen and taught, whether the pieces can be
 * filled in time, and which quantity moves which state most.
 */
export function writeClocks(input: RunsInput): Result<ClocksDocument> {
  const taken = takeInHand(input);
  if (!taken.ok) return taken;
  return ok({ schema: 'benchtide.clocks/1', runs: taken.value.map((run) => clocksOfRun(run, input)) });
}

function clocksOfRun(sized: SizedRun, { workshop }: RunsInput): ClocksDocument['runs'][number] {
  const { hand, amounts, book } = sized;
  const { run } = hand;
  const clocks = allClocks(hand);
  const filling = fillingTimes(hand);
  return {
    run: run.order.key,
    title: run.order.title,
    parts: run.design.parts.flatMap((part) => {
      if (part.kind === 'decor') return [];
      return [
        {
          part: part.key,
          title: part.title,
          clocks: clocks.filter((clock) => clock.part === part.key && concerns(run, part.key, clock.state)),
          filling: filling.find((time) => time.part === part.key) ?? null,
          moves:
            part.kind === 'batch'
              ? movesOf(sensitivity(inputsFor(part, run, workshop))).filter((move) =>
                  concerns(run, part.key, move.state),
                )
              : [],
          risks: amounts.find((each) => each.part === part.key)?.risks ?? [],
        },
      ];
    }),
    cure: cureByWeight(hand, workshop.cureRule).told,
    lessons: showLessons(book, run),
  };
}

function movesOf(states: ReturnType<typeof sensitivity>): ClockMove[] {
  return states.flatMap(({ state, moves }) =>
    moves.slice(0, TOLD_MOVES).map(({ input, from, to, factor, text }: Move) => ({
      state,
      input,
      from,
      to,
      factor,
      text,
    })),
  );
}

/** States that only some ways of making a part lead to. */
const onlyFor: Partial<Readonly<Record<SoapState, readonly StageKind[]>>> = {
  'coat-tacky-until': ['dip'],
  'coat-turnable': ['dip'],
  'piping-skinned': ['pipe'],
  'piping-firm': ['pipe'],
  'piping-turnable': ['pipe'],
  'holds-layer': ['pour', 'layer'],
  'bonds-until': ['pour', 'layer'],
  skinned: ['pour', 'layer'],
  firm: ['pour', 'layer'],
  patchable: ['pour', 'layer'],
  'pliable-until': ['pour', 'layer'],
  handled: ['pour', 'layer'],
  cuttable: ['pour', 'layer'],
  'cuttable-until': ['pour', 'layer'],
};

/** Whether a part as it is made here ever comes into a state. What is not cut has no time for it. */
function concerns(run: RunWorkings, part: string, state: SoapState): boolean {
  const kind = makingStage(run.design, part)?.kind;
  const kinds = onlyFor[state];
  if (kinds !== undefined && kind !== undefined && !kinds.includes(kind)) return false;
  const cut = run.design.stages.some((stage) => stage.kind === 'cut');
  return cut || (state !== 'cuttable' && state !== 'cuttable-until');
}
