import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createdRun, cureCurve, type CureCurve, type LoggedView, type Lot } from '#contract';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const DAY_MS = 86_400_000;
const unmoulded = Date.parse('2026-11-29T18:20:00Z');
const dayAfter = (days: number): string => new Date(unmoulded + days * DAY_MS).toISOString();
let bench: TestApi;
let runId: string;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T12:00:00Z', file);
  const [order] = await bench.stock(file);
  const made = await bench.call('POST', '/api/runs', order);
  runId = createdRun.parse(made.body).run.id;
});
afterAll(() => bench.close());

const goTo = (instant: string): void =>
  bench.clock.advance((Date.parse(instant) - bench.clock.now().getTime()) / 60_000);

async function log(entry: object): Promise<LoggedView> {
  const answer = await bench.call('POST', `/api/runs/${runId}/log`, entry);
  expect(answer.status, JSON.stringify(answer.body)).toBe(201);
  return answer.body.entry;
}
const weighIn = (days: number, massG: number) => ({
  kind: 'weigh-in',
  pieces: 12,
  massG,
  at: dayAfter(days),
});
const cure = async (): Promise<CureCurve> =>
  cureCurve.parse((await bench.call('GET', `/api/runs/${runId}/cure`)).body);
const lot = async (): Promise<Lot> => (await bench.call('GET', '/api/lots')).body[0];

describe('the cure of a lot over HTTP', () => {
  it('has not begun before the soap is out of its moulds', async () => {
    expect(await cure()).toMatchObject({ startedAt: null, readings: [], curve: [], byWeight: false });
    const nowhere = '/api/runs/01900000-0000-7000-8000-000000000000/cure';
    expect((await bench.call('GET', nowhere)).status).toBe(404);
  });

  it('has readings but no curve while they are too few, and none that counts from before the last stage', async () => {
    goTo('2026-11-30T20:00:00Z');
    await log({ kind: 'done', stage: 'pour-under', at: '2026-11-27T19:00:00Z' });
    await log({ kind: 'done', stage: 'pour-over', at: '2026-11-27T20:30:00Z' });
    await log({ kind: 'done', stage: 'unmould', at: dayAfter(0) });
    await log(weighIn(0.01, 1500));
    await log({ kind: 'done', stage: 'turn', at: dayAfter(1) });
    const { startedAt, readings, curve, cure: told } = await cure();
    expect(startedAt).toBe(dayAfter(0));
    expect(readings).toMatchObject([{ pieces: 12, massG: 1500, pieceG: 125, counts: false }]);
    expect(curve).toEqual([]);
    expect(told.note).toMatchObject({ code: 'cure.few-weighings' });
  });

  it('is drawn through the weighings and on past the day that they say', async () => {
    const byClock = await lot();
    goTo('2026-12-30T20:00:00Z');
    const weighed = [
      [1.1, 1490],
      [8, 1420],
      [15, 1385],
      [25, 1362],
    ] as const;
    for (const [days, massG] of weighed) await log(weighIn(days, massG));
    const { readings, curve, byWeight, cure: told } = await cure();
    expect(byWeight).toBe(true);
    expect(readings.map(({ counts }) => counts)).toEqual([false, true, true, true, true]);
    // Within 1 % of what was weighed: scales and handling are taken to be right to 0.2 %.
    for (const [days, massG] of weighed) {
      expect(Math.abs((likelyAt(curve, days) * 12) / massG - 1)).toBeLessThan(0.01);
    }
    for (const [i, point] of curve.entries()) {
      expect(point.pieceG.low).toBeLessThanOrEqual(point.pieceG.likely);
      expect(point.pieceG.likely).toBeLessThanOrEqual(point.pieceG.high);
      expect(point.pieceG.likely).toBeLessThanOrEqual(curve[i - 1]?.pieceG.likely ?? Infinity);
    }
    expect(curve.at(-1)?.days).toBeCloseTo((told.readyDays?.high ?? 0) + 7, 6);
    // The lot on the shelf follows its scales.
    const byScales = await lot();
    expect(byScales.ready.likely).not.toBe(byClock.ready.likely);
    const likely = unmoulded + (told.readyDays?.likely ?? 0) * DAY_MS;
    expect(Math.abs(Date.parse(byScales.ready.likely) - likely)).toBeLessThan(2 * DAY_MS);
  });

  it('is asked back where a mass is five times off, and taken once it is confirmed', async () => {
    const before = await cure();
    for (const massG of [13_610, 136.1]) {
      const refused = await bench.call('POST', `/api/runs/${runId}/log`, weighIn(26, massG));
      expect(refused.status).toBe(422);
      expect(refused.body.issues).toMatchObject([
        { code: 'log.weigh-in-doubtful', value: massG, accepted: '272 g to 6,810 g' },
      ]);
      expect(refused.body.issues[0].message).toContain('was expected. Is it a slip?');
    }
    expect(await cure()).toEqual(before);
    const slip = await log({ ...weighIn(26, 13_610), confirmed: true });
    const after = await cure();
    expect(after.readings.at(-1)).toMatchObject({ massG: 13_610, counts: false });
    // A slip bends no forecast, and the right weighing after it is not blamed for it.
    expect(after.cure.readyDays).toEqual(before.cure.readyDays);
    const right = await log(weighIn(27, 1359));
    expect((await cure()).readings.at(-1)).toMatchObject({ massG: 1359, counts: true });
    expect((await cure()).cure.note).toBeUndefined();
    for (const { id } of [right, slip]) {
      await log({ kind: 'take-back', entry: id, at: dayAfter(27) });
    }
    expect(await cure()).toEqual(before);
  });

  it('leaves out a weighing that was taken back', async () => {
    const before = await cure();
    const slip = await log(weighIn(26, 1361));
    expect((await cure()).readings).toHaveLength(before.readings.length + 1);
    await log({ kind: 'take-back', entry: slip.id, at: dayAfter(26) });
    expect(await cure()).toEqual(before);
  });
});

/** Straight between the points on either side. */
function likelyAt(curve: CureCurve['curve'], days: number): number {
  const at = curve.findIndex((point) => point.days >= days);
  const [before, after] = [curve[at - 1], curve[at]];
  if (before === undefined || after === undefined) throw new Error(`day ${String(days)} is off the curve`);
  const share = (days - before.days) / (after.days - before.days);
  return before.pieceG.likely + share * (after.pieceG.likely - before.pieceG.likely);
}
