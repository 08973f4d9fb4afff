import type { ClockInputs, StateId } from '#clocks';
import type { PieceDesign, Stage, StageKind, Wait } from '#contract';
import { countsFrom } from './counts-from.js';
import { mixedTogether } from './mixed-together.js';
import type { PartsOfPieces } from './pieces.js';
import { stageKindFacts } from './stage-kinds.js';

/** What of a design its order follows from. */
export type Outline = Pick<PieceDesign, 'parts' | 'stages' | 'links' | 'waits'> &
  Partial<Pick<PieceDesign, 'without' | 'adds'>> &
  Pick<PartsOfPieces, 'groups'>;

/** The stage that makes a part; the first where several do, which a checked design has not. */
export function makingStage(design: Outline, part: string): Stage | undefined {
  return design.stages.find((stage) => stage.part === part && stageKindFacts[stage.kind].makes);
}

/** What the batch of a part has been through when it goes into the mould, by the stages that prepare it. */
export function processOf(design: Outline, part: string): ClockInputs['process'] {
  if (preparingStage(design, part, 'rebatch') !== undefined) return 'rebatched';
  return preparingStage(design, part, 'cook') === undefined ? 'cold' : 'cooked';
}

/**
 * Whether a stage is done before the part that it names is made: what prepares its batch, and what the maker wrote down ahead of
 * the making, a rest or the test of what is cooked in the pot.
 */
export function isBeforeMaking(design: Outline, stage: Stage): boolean {
  const { prepares, restMin } = stageKindFacts[stage.kind];
  if (prepares === true) return true;
  const isOfPot = stage.kind === 'zap-test' && processOf(design, stage.part) !== 'cold';
  if (restMin === undefined && !isOfPot) return false;
  const making = makingStage(design, stage.part);
  return making !== undefined && design.stages.indexOf(stage) < design.stages.indexOf(making);
}

/** The stage of a kind that prepares the batch of a part; the first where several do. */
export function preparingStage(design: Outline, part: string, kind: StageKind): Stage | undefined {
  const batch = mixedTogether(design, part);
  return design.stages.find((stage) => stage.kind === kind && batch.some(({ key }) => key === stage.part));
}

/** The stage from whose end a state of a part counts, in the order of a design: the making also for what dries later. */
export function startingStage(design: Outline, part: string, state: StateId): Stage | undefined {
  const beginning = countsFrom(state);
  if (beginning === 'making' || beginning === 'unmoulding') return makingStage(design, part);
  return (
    (beginning === 'cook' ? offTheHeat(design, part) : undefined) ?? preparingStage(design, part, beginning)
  );
}

/** What is tested in the pot stays hot until then, and what is melted again is hot again. */
function offTheHeat(design: Outline, part: string): Stage | undefined {
  const test = preparingStage(design, part, 'zap-test');
  const isInPot = test !== undefined && isBeforeMaking(design, test);
  return isInPot ? test : preparingStage(design, part, 'rebatch');
}

/** The stages that a wait counts from, one for each of its sides. */
export function stagesBehind(design: Outline, { part, opens, closes }: Wait): Stage[] {
  return [opens, closes].flatMap((state) =>
    state === undefined ? [] : (startingStage(design, part, state) ?? []),
  );
}

/**
 * Keys of the stages right before one: by link, by what it waits for, or because they make its part.
 * @param told the links and waits that count, where not all of the design's do
 */
export function stagesBefore(
  design: Outline,
  key: string,
  told: Pick<Outline, 'links' | 'waits'> = design,
): ReadonlySet<string> {
  const stage = design.stages.find((each) => each.key === key);
  const making =
    stage === undefined || isBeforeMaking(design, stage) ? undefined : makingStage(design, stage.part)?.key;
  return new Set([
    ...told.links.filter(({ to }) => to === key).map(({ from }) => from),
    ...told.waits
      .filter((wait) => wait.stage === key)
      .flatMap((wait) => stagesBehind(design, wait).map((each) => each.key)),
    ...(making === undefined || making === key ? [] : [making]),
  ]);
}

/** Keys that come after a stage, by design and stage: a run is asked for them at every turn, and its design stays as it is. */
const after = new WeakMap<Outline, Map<string, ReadonlySet<string>>>();

/** Whether one stage comes before another by the links and waits of a design. */
export function leadsTo(design: Outline, from: string, to: string): boolean {
  const known = after.get(design) ?? new Map<string, ReadonlySet<string>>();
  after.set(design, known);
  const reached = known.get(from) ?? reachedFrom(design, from);
  known.set(from, reached);
  return reached.has(to);
}

function reachedFrom(design: Outline, from: string): ReadonlySet<string> {
  const reached = new Set([from]);
  const waiting = design.waits.map((wait) => ({
    stage: wait.stage,
    behind: stagesBehind(design, wait).map(({ key }) => key),
  }));
  // A set that grows while it is walked through is walked through to its end.
  for (const key of reached) {
    const makes = design.stages.filter(
      (stage) => stage.key === key && makingStage(design, stage.part) === stage,
    );
    for (const link of design.links) if (link.from === key) reached.add(link.to);
    for (const { stage, behind } of waiting) if (behind.includes(key)) reached.add(stage);
    for (const { part } of makes) {
      for (const stage of design.stages)
        if (stage.part === part && !isBeforeMaking(design, stage)) reached.add(stage.key);
    }
  }
  return reached;
}

/**
 * Whether a stage is meant to come before another: by links and waits, and where these do not say, by their places in
 * the list, as a maker writes stages down in the order in which they are done.
 */
export function isBefore(design: Outline, first: Stage, then: Stage): boolean {
  if (leadsTo(design, first.key, then.key)) return first.key !== then.key;
  if (leadsTo(design, then.key, first.key)) return false;
  return design.stages.indexOf(first) < design.stages.indexOf(then);
}
