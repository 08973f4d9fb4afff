import { describe, expect, it } from 'vitest';
import { planDocument, type ConflictResolution, type PlanDocument, type RunFile } from '#contract';
import { instantOf } from '#hours';
import { planRuns } from '#runs';
import { isoInstant, minute } from '#units';
import { assessRuns } from '../assess-runs.js';
import { solveRuns } from './solve-runs.js';
import { loadRunFile } from '../../../tests/support/run-files.js';

const ZONE = 'Europe/Dublin';
const file = loadRunFile('ok', 'two-layer');
const [run] = file.runs;
const [design] = file.designs;
if (run === undefined || design === undefined) throw new Error('no run');

function plannedFrom(changed: RunFile): PlanDocument {
  const now = instantOf(changed.runs[0]?.startAfter ?? '', ZONE) ?? minute(0);
  const planned = planRuns(changed, { now, scenarios: 100 });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  expect(planDocument.safeParse(planned.value).error).toBeUndefined();
  return planned.value;
}

function resolutionOf(changed: RunFile): ConflictResolution | undefined {
  const planned = plannedFrom(changed);
  expect(planned.status).toBe('conflict');
  return planned.resolution;
}

/** Unmoulded 8 to 10 hours after the upper layer, whatever the soap does, in evening hours alone. */
function overnight(startAfter: string, evenings: Partial<RunFile['workshop']['hours']['weekly']>): RunFile {
  const none = { friday: [], saturday: [], sunday: [], monday: [], tuesday: [] };
  const weekly = { ...file.workshop.hours.weekly, ...none, ...evenings };
  const links = [
    { from: 'pour-over', to: 'unmould', atLeastMin: 480, atMostMin: 600 },
    { from: 'unmould', to: 'turn', atLeastMin: 0 },
  ];
  const waits = design?.waits.filter(({ stage }) => stage !== 'unmould') ?? [];
  return {
    ...file,
    workshop: { ...file.workshop, hours: { ...file.workshop.hours, weekly } },
    designs: [{ ...design!, links, waits }],
    runs: [{ ...run!, startAfter }],
  };
}

/** A stage as a message names it. */
const stage = (key: string | null): unknown =>
  expect.objectContaining({ run: run.key, stage: key }) as unknown;

/** The instant of a local time, as messages have it. */
const instant = (local: string): string => isoInstant(instantOf(local, ZONE) ?? minute(0));

describe('a conflict on the clock', () => {
  /** The search for a plan is over when the conflict is known, so every later question comes from what would resolve it. */
  it('is told without what would resolve it where there is no time left for that', () => {
    const evenings = [{ from: '18:00', to: '22:00' }];
    const changed = overnight('2026-11-27T18:00', { friday: evenings, monday: evenings, tuesday: evenings });
    const now = instantOf('2026-11-27T18:00', ZONE) ?? minute(0);
    const asked = (of: (stop: () => boolean) => unknown): number => {
      let times = 0;
      of(() => (times++, false));
      return times;
    };
    const taken = assessRuns(changed);
    if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
    const assessed = taken.value.map((each) => each.assessed);
    const solving = asked((stop) => solveRuns(changed, assessed, { now, stop }));
    let times = 0;
    const planned = planRuns(changed, { now, stop: () => ++times > solving });
    const full = planRuns(changed, { now });
    if (!planned.ok || !full.ok) throw new Error('no plan');
    expect(full.value.resolution?.relaxations).not.toEqual([]);
    expect(planned.value).toEqual({
      ...full.value,
      resolution: { ...full.value.resolution, relaxations: [] },
    });
  });

  /** The upper layer takes 20 min and 12 times 10 s: from 19:12 to 19:34, and 8 to 10 hours on are 03:34 to 05:34. */
  it('shows the window against the hours, and what alone would resolve it', () => {
    const evenings = [{ from: '18:00', to: '22:00' }];
    const found = resolutionOf(
      overnight('2026-11-27T18:00', { friday: evenings, monday: evenings, tuesday: evenings }),
    );
    const [from, to] = [instant('2026-11-28T03:34'), instant('2026-11-28T05:34')];
    expect(found?.timing).toEqual({
      code: 'timing.hours',
      given: { stage: stage('pour-over'), at: instant('2026-11-27T19:12') },
      stage: stage('unmould'),
      ...{ minutes: 10, from, to },
      ...{ endsAt: instant('2026-11-27T22:00'), opensAt: instant('2026-11-30T18:00') },
    });
    // The longest stretch between two evenings is from one at 22:00 to the next at 18:00.
    const after = stage('pour-over');
    expect(found?.relaxations).toEqual([
      { code: 'relaxation.hours', stage: stage('unmould'), minutes: 10, from, to },
      { code: 'relaxation.at-least', stage: stage('unmould'), after, minutes: 135, insteadOf: 480 },
      { code: 'relaxation.at-most', stage: stage('unmould'), after, minutes: 1200, insteadOf: 600 },
    ]);
  });

  /** In the night to 25 October 2026 Ireland's clocks go back at 02:00 (IANA time zone database). */
  it('counts instants through a night in which the clocks go back', () => {
    const found = resolutionOf(overnight('2026-10-24T18:00', { saturday: [{ from: '18:00', to: '21:00' }] }));
    expect(found?.timing).toMatchObject({ from: '2026-10-25T02:34:00.000Z', to: '2026-10-25T04:34:00.000Z' });
  });

  it('holds the day that can be kept against the one that is asked for', () => {
    const found = resolutionOf({ ...file, runs: [{ ...run, readyBy: '2026-12-12' }] });
    expect(found).toMatchObject({
      timing: {
        code: 'timing.too-late',
        given: { stage: stage('unmould') },
        stage: { run: run.key, stage: null, title: run.title },
        due: instant('2026-12-12T00:00'),
      },
      relaxations: [{ code: 'relaxation.ready-by', day: '2027-01-05' }],
    });
    expect(plannedFrom({ ...file, runs: [{ ...run, readyBy: '2027-01-05' }] }).status).toBe('planned');
    expect(plannedFrom({ ...file, runs: [{ ...run, readyBy: '2027-01-04' }] }).status).toBe('conflict');
  });

  it('says of two waits at odds how long each might be', () => {
    const links = [...design.links, { from: 'pour-over', to: 'unmould', atLeastMin: 0, atMostMin: 600 }];
    const found = resolutionOf({ ...file, designs: [{ ...design, links }] });
    expect(found).toMatchObject({
      timing: { code: 'timing.too-late', stage: stage('unmould'), due: instant('2026-11-28T05:34') },
      relaxations: [
        { code: 'relaxation.at-most', after: stage('pour-over'), minutes: 46 * 60, insteadOf: 600 },
        { code: 'relaxation.opens', part: { title: 'Upper layer' }, state: 'firm', minutes: 600 },
      ],
    });
  });

  it('counts what is too few, and says when nothing alone is enough', () => {
    const due = { ...run, readyBy: '2027-01-05' };
    const two = {
      ...file,
      runs: [due, { ...due, key: 'more', title: 'Twelve more', startAfter: run.startAfter }],
    };
    const found = resolutionOf(two);
    expect(found?.relaxations).toContainEqual(
      expect.objectContaining({ code: 'relaxation.owned', count: 24, insteadOf: 12 }),
    );
    const moulds = file.moulds.map((mould) => ({ ...mould, cavities: 24 }));
    expect(plannedFrom({ ...two, moulds }).status).toBe('planned');
    const evenings = [{ from: '18:00', to: '22:00' }];
    const both = overnight('2026-11-27T18:00', { friday: evenings, monday: evenings, tuesday: evenings });
    const stuck = resolutionOf({ ...both, runs: [{ ...run, readyBy: '2026-12-12' }] });
    expect(stuck?.relaxations).toEqual([]);
  });
});
