import type { SheetCard } from './sheet-cards.js';
import type { RunPlan } from './use-run.js';
import type { WeighGroup } from './weigh-lines.js';

type Stage = RunPlan['stages'][number];

/** What is weighed for a stage: some or all of what its batch or part needs. */
export interface SheetWeigh {
  readonly card: SheetCard;
  readonly kinds: ReadonlySet<WeighGroup['kind']>;
}

export interface SheetStage {
  readonly stage: Stage;
  readonly weigh: readonly SheetWeigh[];
}

/** What is done at one go, in the order of doing; instants in milliseconds since 1970. */
export interface SheetSitting {
  readonly from: number;
  readonly to: number;
  readonly stages: readonly SheetStage[];
}

/** What was done outside all sittings of the plan belongs together where no more than this lies between, in milliseconds. */
const APART = 2 * 3_600_000;

/**
 * The stages of a run by sitting, each with what is weighed for it: lye where it is made, fats where they are melted, and the rest
 * where the batch or part is begun otherwise.
 * @param sittings of the plan, of all runs
 */
export function sheetSittings(
  stages: readonly Stage[],
  sittings: readonly { readonly startAt: string; readonly endAt: string }[],
  cards: readonly SheetCard[],
): SheetSitting[] {
  const ordered = inOrder(stages);
  const weigh = weighByStage(stages, cards);
  const found: { from: number; to: number; planned: string | undefined; stages: SheetStage[] }[] = [];
  for (const stage of ordered) {
    const [from, to] = [Date.parse(stage.startAt), Date.parse(stage.endAt)];
    const planned = sittings.find(
      ({ startAt, endAt }) => from >= Date.parse(startAt) && from <= Date.parse(endAt),
    )?.startAt;
    const last = found.at(-1);
    const own = { stage, weigh: weigh.get(stage) ?? [] };
    const isSame = last?.planned === planned && (planned !== undefined || from - (last?.to ?? 0) < APART);
    if (last !== undefined && isSame) {
      last.stages.push(own);
      last.to = Math.max(last.to, to);
    } else found.push({ from, to, planned, stages: [own] });
  }
  return found;
}

function inOrder(stages: readonly Stage[]): Stage[] {
  return stages.toSorted((a, b) => Date.parse(a.startAt) - Date.parse(b.startAt));
}

/** What is weighed for each stage of a run; stages for which nothing is weighed are not in it. */
export function weighByStage(
  stages: readonly Stage[],
  cards: readonly SheetCard[],
): ReadonlyMap<Stage, readonly SheetWeigh[]> {
  const ordered = inOrder(stages);
  const at = new Map<Stage, SheetWeigh[]>();
  for (const card of cards) {
    const parts = 'shared' in card ? card.shared.parts : [card.part.part];
    const own = ordered.filter(({ part, status }) => parts.includes(part) && status !== 'spoilt');
    const lye = own.find(({ kind }) => kind === 'make-lye');
    const fats = own.find(({ kind }) => kind === 'melt-fats');
    const rest = own.find((stage) => stage.kind !== 'make-lye' && stage.kind !== 'melt-fats') ?? own[0];
    const kinds = new Map<Stage, Set<WeighGroup['kind']>>();
    for (const [stage, kind] of [
      [lye ?? rest, 'lye'] as const,
      [fats ?? rest, 'fats'] as const,
      [rest, 'batter'] as const,
    ]) {
      if (stage !== undefined) kinds.set(stage, (kinds.get(stage) ?? new Set()).add(kind));
    }
    for (const [stage, some] of kinds) at.set(stage, [...(at.get(stage) ?? []), { card, kinds: some }]);
  }
  return at;
}

/** The cautions of a stage that are still to be told, and the codes of those that stand above it. */
export interface StageCautions {
  readonly above: ReadonlySet<string>;
  readonly own: Stage['cautions'];
}

/** Each caution once in a sitting, at the first act that it is for; those of what is weighed stand with it. */
export function cautionsOnce(stages: readonly SheetStage[]): StageCautions[] {
  const told = new Set<string>();
  return stages.map(({ stage, weigh }) => {
    const above = new Set(told);
    const weighed = weigh.flatMap(cautionsOf);
    for (const code of weighed) told.add(code);
    const own = stage.cautions.filter(({ code }) => !told.has(code));
    for (const { code } of own) told.add(code);
    return { above, own };
  });
}

/** Codes of the cautions that stand with what is weighed: that of lye with the lye, the others where the batch comes together. */
function cautionsOf({ card, kinds }: SheetWeigh): string[] {
  const batch = 'shared' in card ? card.shared : card.own;
  const whole = 'shared' in card ? [] : card.part.cautions;
  const codes = (batch?.cautions ?? []).map(({ code }) => code);
  return [
    ...codes.filter((code) => kinds.has(code === 'caution.lye' ? 'lye' : 'batter')),
    ...(kinds.has('batter') ? whole.map(({ code }) => code) : []),
  ];
}
