import type { Caution, Loss, PlanDocument, PlannedStage, Risk } from '#contract';

/** Minutes of all sittings together. */
export function minutesIn({ sittings }: PlanDocument): number {
  return sittings.reduce(
    (sum, each) => sum + (Date.parse(each.endAt) - Date.parse(each.startAt)) / 60_000,
    0,
  );
}

/** Less than half a per cent would read as nothing. */
const SHOWN_SHARE = 0.005;

/** What costs the most odds. `title`: of the stage; null where it is the cure that may not be done by its day. */
export function weakest(
  plan: PlanDocument,
): { readonly title: string | null; readonly share: number; readonly why: Loss } | undefined {
  const [first] = plan.weakLinks;
  if (first === undefined || first.share < SHOWN_SHARE) return undefined;
  const run = plan.runs.find((each) => each.run === first.run);
  const stage = run?.stages.find((each) => each.key === first.stage);
  return { title: stage?.title ?? null, share: first.share, why: first.why };
}

/** All cautions of a plan, each once, those of the soap before those of single stages. */
export function cautionsOf({ runs }: PlanDocument): Caution[] {
  const all = runs.flatMap((run) => [
    ...run.cautions,
    ...[...(run.batches ?? []), ...run.amounts].flatMap(({ cautions }) => cautions),
    ...run.stages.flatMap(({ cautions }) => cautions),
  ]);
  return all.filter(({ code }, i) => all.findIndex((other) => other.code === code) === i);
}

/** What may go wrong with what was written down, each said once, the gravest first. */
export function risksOf({ runs }: PlanDocument): Risk[] {
  const order = { high: 0, medium: 1, low: 2 };
  const all = runs.flatMap(({ batches = [], amounts }) =>
    [...batches, ...amounts].flatMap(({ risks }) => risks),
  );
  return all
    .filter((risk, i) => all.findIndex((other) => JSON.stringify(other) === JSON.stringify(risk)) === i)
    .sort((a, b) => order[a.level] - order[b.level]);
}

export interface ShownSitting {
  readonly startAt: string;
  readonly endAt: string;
  readonly stages: readonly PlannedStage[];
}

/** Sittings with their stages looked up. */
export function sittingsOf({ runs, sittings }: PlanDocument): ShownSitting[] {
  return sittings.map(({ startAt, endAt, stages }) => ({
    startAt,
    endAt,
    stages: stages.flatMap(({ run, stage, attempt }) => {
      const found = runs
        .find((each) => each.run === run)
        ?.stages.find((each) => each.key === stage && each.attempt === attempt);
      return found === undefined ? [] : [found];
    }),
  }));
}

/** From the first opening to the last call, but not far beyond the starts; milliseconds since 1970. */
export function stretchOf(stages: readonly PlannedStage[]): readonly [from: number, to: number] {
  const starts = stages.map(({ startAt }) => Date.parse(startAt));
  const [first, last] = [Math.min(...starts), Math.max(...starts)];
  // Windows that are open for weeks would leave no room for the days at the bench.
  const around = (last - first) * 0.2 + 6 * 3_600_000;
  const from = Math.max(first - around, Math.min(...stages.map(({ opensAt }) => Date.parse(opensAt))));
  const calls = stages.flatMap(({ lastCallAt }) => (lastCallAt === null ? [] : [Date.parse(lastCallAt)]));
  return [from, Math.min(last + around, Math.max(last, ...calls))];
}
