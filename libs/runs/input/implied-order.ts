import type { Link, OpeningState, Part, PieceDesign, Stage, StageKind, Wait } from '#contract';
import { stageKindFacts } from './stage-kinds.js';

/** What a design leaves unsaid and nobody does otherwise. */
export interface ImpliedOrder {
  readonly waits: readonly Wait[];
  readonly links: readonly Link[];
}

/**
 * A link that lets this many minutes pass after a part is made says when its soap is firm, by the maker's own experience;
 * a shorter one speaks of something else. Common practice, no source: no batter is firm within the hour.
 */
const LEAST_TO_FIRM_MIN = 60;

type Outline = Pick<PieceDesign, 'parts' | 'stages' | 'links' | 'waits'>;

/** States in which soap bears being taken out of its mould, or cut. */
const FIRM_ENOUGH: ReadonlySet<OpeningState> = new Set([
  'firm',
  'cuttable',
  'coat-turnable',
  'piping-firm',
  'glaze-set',
  'cured',
]);

/** What has to be over before soap that was cast is turned or wrapped: no hand gets round it in its mould. */
const OUT_BEFORE: Partial<Readonly<Record<StageKind, readonly StageKind[]>>> = {
  turn: ['unmould'],
  wrap: ['unmould', 'cut'],
};

/**
 * The waits and links that a design needs so that soap is not unmoulded or cut before it is firm, nor handled before it
 * is out of its mould:
 * - unmoulding waits until what is in the mould is firm, and comes after all of it is made;
 * - cutting comes after the unmoulding of the same soap; where nothing unmoulds it, it waits until the soap can be cut;
 * - turning comes after the unmoulding of the same soap, and wrapping after its unmoulding and cutting.
 * A design that says so itself, in whatever firm state of a part in that mould or by hours after its making, is left as
 * it is.
 * @param dropped parts that are left out: nothing waits for them, and a wait for one of them holds nothing back
 */
export function impliedOrder(design: Outline, dropped: ReadonlySet<string> = new Set()): ImpliedOrder {
  const waits: Wait[] = [];
  const links: Link[] = [];
  // Against all that was added before, so that nothing is ever to come after itself.
  const comesBefore = (from: string, to: string): boolean =>
    leadsTo({ ...design, waits: [...design.waits, ...waits], links: [...design.links, ...links] }, from, to);
  const putAfter = (stage: Stage, before: Stage): void => {
    if (!comesBefore(before.key, stage.key)) links.push({ from: before.key, to: stage.key, atLeastMin: 0 });
  };
  for (const stage of design.stages) {
    const cast = castTogether(design, stage.part);
    const isOfCast = ({ part }: Stage): boolean => cast.some(({ key }) => key === part);
    for (const before of design.stages) {
      const isFirst = OUT_BEFORE[stage.kind]?.includes(before.kind) === true && isOfCast(before);
      if (isFirst && !comesBefore(stage.key, before.key)) putAfter(stage, before);
    }
    if (stage.kind !== 'unmould' && stage.kind !== 'cut') continue;
    const unmould = design.stages.find(
      (each) =>
        stage.kind === 'cut' &&
        each.kind === 'unmould' &&
        isOfCast(each) &&
        !comesBefore(stage.key, each.key),
    );
    if (unmould !== undefined) {
      putAfter(stage, unmould);
      continue;
    }
    const inside = cast.flatMap((part) => {
      const making = makingOf(design, part.key);
      const counts = making !== undefined && making !== stage && !dropped.has(part.key);
      return counts && !comesBefore(stage.key, making.key) ? [{ part, making }] : [];
    });
    const isTold = inside.some(
      ({ part, making }) => waitsUntilFirm(design, stage, part) || lagsBehind(design, stage, making),
    );
    for (const { part, making } of inside) {
      const opens = isTold ? undefined : firmStateOf(part, making, stage);
      if (opens === undefined) putAfter(stage, making);
      else waits.push({ stage: stage.key, part: part.key, opens });
    }
  }
  return { waits, links };
}

/** A design with what it leaves unsaid. What it says keeps its place. */
export function withImplied(design: PieceDesign, { waits, links }: ImpliedOrder): PieceDesign {
  if (waits.length === 0 && links.length === 0) return design;
  return { ...design, waits: [...design.waits, ...waits], links: [...design.links, ...links] };
}

/** The part itself, and all that shares its cavity. */
function castTogether(design: Outline, key: string): Part[] {
  const part = design.parts.find((each) => each.key === key);
  if (part === undefined) return [];
  const mould = part.kind === 'batch' ? part.mould : undefined;
  if (mould === undefined) return [part];
  return design.parts.filter((each) => each.kind === 'batch' && each.mould === mould);
}

function makingOf(design: Outline, part: string): Stage | undefined {
  return design.stages.find((stage) => stage.part === part && stageKindFacts[stage.kind].makes);
}

function waitsUntilFirm({ waits }: Outline, stage: Stage, part: Part): boolean {
  return waits.some(
    ({ stage: waiting, part: waited, opens }) =>
      waiting === stage.key && waited === part.key && opens !== undefined && FIRM_ENOUGH.has(opens),
  );
}

function lagsBehind({ links }: Outline, stage: Stage, making: Stage): boolean {
  return links.some(
    ({ from, to, atLeastMin }) => from === making.key && to === stage.key && atLeastMin >= LEAST_TO_FIRM_MIN,
  );
}

/** @returns undefined where a part has no clock */
function firmStateOf(part: Part, making: Stage, stage: Stage): OpeningState | undefined {
  if (part.kind === 'decor') return undefined;
  if (part.kind === 'melt-and-pour') return 'glaze-set';
  if (making.kind === 'dip') return 'coat-turnable';
  if (making.kind === 'pipe') return 'piping-firm';
  return stage.kind === 'cut' ? 'cuttable' : 'firm';
}

/** Whether one stage comes before another by what the design says. */
function leadsTo(design: Outline, from: string, to: string): boolean {
  const reached = new Set([from]);
  // A set that grows while it is walked through is walked through to its end.
  for (const key of reached) {
    const makes = design.stages.filter(
      (stage) => stage.key === key && makingOf(design, stage.part) === stage,
    );
    for (const link of design.links) if (link.from === key) reached.add(link.to);
    for (const { part } of makes) {
      for (const wait of design.waits) if (wait.part === part) reached.add(wait.stage);
      for (const stage of design.stages) if (stage.part === part) reached.add(stage.key);
    }
  }
  return reached.has(to);
}
