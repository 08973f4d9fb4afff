import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  createdRun,
  planInput,
  type CreatedRun,
  type PlanDocument,
  type PlanInput,
  type RunOrder,
} from '#contract';
import { referencedBy, planRuns, readPlanInput, withRecipes, type RecipeChange, type RunsInput } from '#runs';
import { minuteOfIso, type Result } from '#units';
import { withTexts } from '#words';
import { en } from '#words/en';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('demo', 'orchard-loaves');
const order = { ...file.runs[0]!, startAfter: '2026-11-28T08:00' };
let bench: TestApi;
let first: CreatedRun;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T12:00:00Z', file);
  await bench.stock(file);
  first = createdRun.parse((await bench.call('POST', '/api/runs', order)).body);
});
afterAll(() => bench.close());

async function read(path: string): Promise<PlanInput> {
  return planInput.parse((await bench.call('GET', path)).body);
}

/** What a program on the device does with it. */
function orderInput(from: PlanInput, run: RunOrder, changes: readonly RecipeChange[]): RunsInput {
  const input = readPlanInput(from);
  const design = input.designs.find(({ key }) => key === run.design)!;
  const matter = referencedBy(design, input);
  const recipes = withRecipes(matter.recipes, changes);
  return { ...input, designs: [design], recipes, fats: matter.fats, runs: [run] };
}

/** As the API says it to who asks for no language: each message with its text, and no field that is undefined. */
function said(plan: Result<PlanDocument>): unknown {
  if (!plan.ok) return plan;
  const reader = { language: 'en', units: 'metric', timeZone: file.workshop.timeZone } as const;
  return JSON.parse(JSON.stringify(withTexts(plan.value, reader, en)));
}

describe('what plans are made from', () => {
  it('gives the plan that the API makes of a new run, beside the others and with its recipe changed', async () => {
    const recipes = [{ recipe: 'orchard-loaf', lyeConcentrationPercent: 29, sodiumLactatePercent: 2.5 }];
    const second = { ...order, key: 'second', title: 'Second loaves' };
    const from = await read('/api/plan-input');
    const mine = planRuns(orderInput(from, second, recipes), { now: minuteOfIso(from.madeAt) });
    const made = await bench.call('POST', '/api/runs', { ...second, recipes });
    expect(made.status, JSON.stringify(made.body)).toBe(201);
    const { plan, run } = createdRun.parse(made.body);
    expect(plan.document.status).toBe('planned');
    expect(said(mine)).toEqual(plan.document);
    // The change is the run's own: its order does not tell of it, and the library is as it was.
    expect(run.order).not.toHaveProperty('recipes');
    expect((await read('/api/plan-input')).recipes).toEqual(file.recipes);
    const [copy] = (await read(`/api/runs/${run.id}/plan-input`)).recipes;
    expect(copy).toMatchObject({ lyeConcentrationPercent: 29, sodiumLactatePercent: 2.5 });
  });

  it('gives the next plan of a run that there is', async () => {
    const path = `/api/runs/${first.run.id}`;
    const from = await read(`${path}/plan-input`);
    const previous = first.plan.document;
    const mine = planRuns(readPlanInput(from), { now: minuteOfIso(from.madeAt), previous });
    const { body } = await bench.call('POST', `${path}/plan`, {});
    expect(said(mine)).toEqual(body.document);
  });

  it('refuses a change to a recipe that the design does not use, and to water that is none', async () => {
    const bad = (recipes: unknown) => bench.call('POST', '/api/runs', { ...order, key: 'bad', recipes });
    const unknown = await bad([{ recipe: 'candle', sodiumLactatePercent: 1 }]);
    expect(unknown).toMatchObject({ status: 422, body: { issues: [{ path: 'recipes[0].recipe' }] } });
    const thin = await bad([{ recipe: 'orchard-loaf', lyeConcentrationPercent: 5 }]);
    expect(thin.status).toBe(422);
    expect((await bench.call('GET', '/api/runs')).body).toHaveLength(2);
  });
});
