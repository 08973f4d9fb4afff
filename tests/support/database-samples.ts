import {
  pieceDesign,
  planDocument,
  runOrder,
  workshopFacts,
  type Mould,
  type PlanDocument,
  type PlannedStage,
  type RunOrder,
  type WorkshopFacts,
} from '#contract';
import { written, type DesiredNudge, type PlanToSave, type RunSnapshot, type Storage } from '#storage';

/** Invented, like everything here. */
export const facts: WorkshopFacts = workshopFacts.parse({
  title: 'Saltmarsh Bench (invented)',
  timeZone: 'Europe/Dublin',
  room: {},
  hours: { weekly: weekOf([{ from: '18:00', to: '22:00' }]) },
});

export const mould: Mould = {
  key: 'six-sided',
  title: 'Six-sided cavities',
  kind: 'silicone-cavity',
  cavityMl: 92,
  cavities: 24,
};

export const order: RunOrder = runOrder.parse({
  key: 'first-tide',
  title: 'First tide',
  design: 'plain-tile',
  count: 24,
  startAfter: '2026-11-27T18:00',
});

export const snapshot: RunSnapshot = {
  design: pieceDesign.parse({
    key: 'plain-tile',
    title: 'Plain tile',
    parts: [{ key: 'base', title: 'Base', kind: 'melt-and-pour', perPieceMl: 80 }],
    stages: [{ key: 'pour-base', title: 'Pour', kind: 'pour', part: 'base' }],
  }),
  recipes: [],
  fats: [],
  moulds: [mould],
};

/** A workshop with one run. */
export async function seedRun(storage: Storage): Promise<{ workshopId: string; runId: string }> {
  const { id: workshopId } = await storage.workshops.create(facts);
  const run = await storage.runs.create(workshopId, { order, snapshot });
  if (!run.ok) throw new Error(run.reason);
  return { workshopId, runId: run.value.id };
}

export function stage(over: Partial<PlannedStage> = {}): PlannedStage {
  return {
    key: 'pour-base',
    attempt: 1,
    title: 'Pour',
    kind: 'pour',
    part: 'base',
    status: 'planned',
    startAt: '2026-11-27T18:00:00.000Z',
    endAt: '2026-11-27T19:00:00.000Z',
    opensAt: '2026-11-27T18:00:00.000Z',
    bestAt: '2026-11-27T18:00:00.000Z',
    lastCallAt: null,
    surelyOpenAt: '2026-11-27T18:00:00.000Z',
    surelyUntil: null,
    why: [{ code: 'why.free' }],
    cautions: [],
    ...over,
  };
}

/** A plan for `order` with one batch part and the given stages. */
export function plan(stages: PlannedStage[] = [stage()], fatsG = 1000): PlanDocument {
  return planDocument.parse({
    schema: 'benchtide.plan/4',
    madeAt: '2026-11-27T12:00:00.000Z',
    timeZone: 'Europe/Dublin',
    status: 'planned',
    runs: [
      {
        run: order.key,
        title: order.title,
        design: order.design,
        count: order.count,
        amounts: [
          {
            part: 'base',
            title: 'Base',
            kind: 'batch',
            count: 24,
            cover: {
              unit: 'g',
              wantedCertainty: 0.95,
              shortageChance: 0.05,
              leftover: { low: 10, likely: 30, high: 50 },
              expectedLeftover: 30,
              leftoverUses: [],
              sizes: [],
              reaches: [],
            },
            risks: [],
            cautions: [],
            batch: {
              fats: [{ fat: 'olive-oil', title: 'Olive oil', massG: fatsG }],
              fatsG,
              naohG: 130,
              pureNaohG: 130,
              kohG: 0,
              pureKohG: 0,
              waterG: 264,
              lyeG: 394,
              acids: [],
              sodiumLactateG: 0,
              saltG: 0,
              sugarG: 0,
              fragrances: [],
              allergens: [],
              colourants: [],
              additions: [],
              water: {
                lyeConcentrationPercent: 33,
                waterPerLye: 2.03,
                waterPercentOfFats: 26.4,
                allWaterPercentOfFats: 26.4,
                withAllWaterPercent: 33,
              },
              superfat: { low: 1, used: 5, high: 8 },
              batchG: fatsG + 394,
              batchMl: 1350,
              densityGPerMl: 1.03,
            },
          },
        ],
        clocks: [],
        filling: [],
        stages,
        ready: null,
        cautions: [],
      },
    ],
    sittings: [],
    odds: null,
    weakLinks: [],
    conflict: [],
  });
}

export function nudge(over: Partial<DesiredNudge> = {}): DesiredNudge {
  return {
    stage: 'pour-base',
    attempt: 1,
    kind: 'time-for-it',
    title: 'Pour',
    startAt: new Date('2026-11-27T18:00:00.000Z'),
    lastCallAt: null,
    dueAt: new Date('2026-11-27T18:00:00.000Z'),
    ...over,
  };
}

/** What `plans.save` takes. */
export function planToSave(
  runId: string,
  nudges: DesiredNudge[],
  document: PlanDocument = plan(),
): PlanToSave {
  return {
    ...{ runId, madeAt: new Date(document.madeAt), cause: { code: 'cause.asked' as const } },
    ...{ document: written(document), changes: [], nudges },
  };
}

function weekOf(spans: { from: string; to: string }[]): WorkshopFacts['hours']['weekly'] {
  const days = { monday: spans, tuesday: spans, wednesday: spans, thursday: spans, friday: spans };
  return { ...days, saturday: spans, sunday: spans };
}
