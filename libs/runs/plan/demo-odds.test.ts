import { expect, it } from 'vitest';
import { openIntervals } from '#hours';
import { planRuns } from '#runs';
import { minute, minuteOfIso, normalQuantile } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const SCENARIOS = 4000;
/** As `odds` has it: what was not ready is tried again so many minutes later. */
const RETEST = 30;
/** 0.9 quantile of the normal distribution, any table (from memory). */
const NINE_OF_TEN = 1.28155;

const now = minuteOfIso('2026-11-27T12:00:00Z');
const demo = loadRunFile('ok', 'plain-tiles');
// Without a day to be late for, as what is late is told as that.
const file = { ...demo, runs: demo.runs.map(({ readyBy: _day, ...run }) => run) };
const { timeZone, hours } = file.workshop;
const open = openIntervals(hours, timeZone, now, minute(now + 30 * 1440));
const planned = planRuns(file, { now, scenarios: SCENARIOS });
if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
const { runs, odds, weakLinks } = planned.value;

function time(key: string, end: 'startAt' | 'endAt'): number {
  return minuteOfIso(runs[0]?.stages.find((stage) => stage.key === key)?.[end] ?? '');
}

/** How long a state takes in a batch that is `z` standard deviations slow. */
function lengthOf(part: string, state: string, z: number): number {
  const clock = runs[0]?.clocks.find((each) => each.part === part && each.state === state);
  const { low, likely, high } = clock!.now;
  return likely * Math.exp((z * Math.log(high / low)) / (2 * NINE_OF_TEN));
}

/** The first test that finds the soap ready, in hours that leave room for the work. */
function firstTest(from: number, ready: number, takes: number): number {
  for (let at = from; ; at += RETEST) {
    at = Math.max(at, open.find(({ to }) => at + takes <= to)!.from);
    if (at >= ready) return at;
  }
}

/** The middles of equally likely slices of a normal distribution. */
const slices = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));

/**
 * Oracle: the demo's own weekend, walked through once more for equally likely paces. The second layer goes on once the first
 * holds it; the tiles are unmoulded once both are firm, and patched at once; lost is what is too hard to patch by then. Firm and
 * too hard go with one pace in each layer; the paces of both, two pours of one recipe, have all in common but the luck of a
 * batch, of σ 0.25.
 */
it('loses as many tiles of the demo to the patching as a walk through its weekend', () => {
  const pouring = time('pour-sand', 'endAt') - time('pour-sand', 'startAt');
  const unmouldAndPatch = time('patch', 'endAt') - time('unmould', 'startAt');
  const base = time('pour-deep', 'endAt');
  const apart = 0.25 / runs[0]!.clocks.find(({ state }) => state === 'firm')!.sigma;
  const together = Math.sqrt(1 - apart * apart);
  const lucks = slices(16).flatMap((one) => slices(16).map((other) => [one, other] as const));
  let lost = 0;
  for (const early of slices(10)) {
    const holds = base + lengthOf('deep', 'holds-layer', early);
    const poured = firstTest(time('pour-sand', 'startAt'), holds, pouring) + pouring;
    if (poured > base + lengthOf('deep', 'bonds-until', early)) continue;
    for (const common of slices(30)) {
      for (const [sandLuck, deepLuck] of lucks) {
        const [sand, deep] = [sandLuck, deepLuck].map((luck) => together * common + apart * luck) as [
          number,
          number,
        ];
        const firm = Math.max(poured + lengthOf('sand', 'firm', sand), base + lengthOf('deep', 'firm', deep));
        const patched = firstTest(time('unmould', 'startAt'), firm, unmouldAndPatch) + unmouldAndPatch;
        if (patched > poured + lengthOf('sand', 'pliable-until', sand)) lost++;
      }
    }
  }
  const expected = lost / (10 * 30 * lucks.length);
  // What is lost in the bowls is taken off all other shares alike.
  const windows = weakLinks.filter(({ why }) => why.code !== 'loss.batter');
  const kept = (odds?.asPlanned ?? NaN) + windows.reduce((sum, { share }) => sum + share, 0);
  const found =
    (windows.find(({ why }) => why.code === 'loss.closed' && why.stage.stage === 'patch')?.share ?? NaN) /
    kept;
  // Four standard errors: 0.026. Readiness judged 34 minutes early would lose 0.36 instead of 0.23.
  expect(Math.abs(found - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / SCENARIOS));
});
