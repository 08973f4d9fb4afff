import { describe, expect, it } from 'vitest';
import { planDocument, type ConflictClash, type PlanDocument, type RunFile } from '#contract';
import { instantOf } from '#hours';
import { planRuns } from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { rangeText } from './range-text.js';

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

function clashOf(changed: RunFile): ConflictClash | undefined {
  const planned = plannedFrom(changed);
  expect(planned.status).toBe('conflict');
  return planned.clash;
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

describe('a conflict on the clock', () => {
  /** The upper layer takes 20 min and 12 times 10 s: from 19:07 to 19:29, and 8 to 10 hours on are 03:29 to 05:29. */
  it('shows the window against the hours, and what alone would resolve it', () => {
    const evenings = [{ from: '18:00', to: '22:00' }];
    const clash = clashOf(
      overnight('2026-11-27T18:00', { friday: evenings, monday: evenings, tuesday: evenings }),
    );
    expect(clash?.text).toBe(
      'With “Pour the upper layer” at Fri 27 Nov 19:07, “Unmould” (10 min) may start Sat 28 Nov 03:29–05:29; ' +
        'your hours end Fri 27 Nov 22:00 and open again Mon 30 Nov 18:00.',
    );
    // The longest stretch between two evenings is from one at 22:00 to the next at 18:00.
    expect(clash?.either).toBe(
      'There is a plan if either you can be at the bench for “Unmould” (10 min) Sat 28 Nov 03:29–05:29, or ' +
        '“Unmould” may start 2 h 20 after “Pour the upper layer” instead of 8 h, or ' +
        '“Unmould” may start up to 20 h after “Pour the upper layer” instead of 10 h.',
    );
    expect(clash?.ways.map(({ code, stage }) => [code, stage])).toEqual([
      ['plan.calendar', 'unmould'],
      ['plan.lag-at-least', 'unmould'],
      ['plan.lag-at-most', 'unmould'],
    ]);
  });

  /** In the night to 25 October 2026 Ireland's clocks go back at 02:00 (IANA time zone database): an hour less on the wall. */
  it('tells local time through a night in which the clocks go back', () => {
    const clash = clashOf(overnight('2026-10-24T18:00', { saturday: [{ from: '18:00', to: '21:00' }] }));
    expect(clash?.text).toBe(
      'With “Pour the upper layer” at Sat 24 Oct 19:07, “Unmould” (10 min) may start Sun 25 Oct 02:29–04:29; ' +
        'your hours end Sat 24 Oct 21:00 and open again Sat 31 Oct 18:00.',
    );
  });

  /** And forward at 01:00 on 28 March 2027: an hour more on the wall. */
  it('tells local time through a night in which they go forward', () => {
    const clash = clashOf(overnight('2027-03-27T18:00', { saturday: [{ from: '18:00', to: '21:00' }] }));
    expect(clash?.text).toContain('may start Sun 28 Mar 04:29–06:29');
  });

  it('holds the day that can be kept against the one that is asked for', () => {
    const clash = clashOf({ ...file, runs: [{ ...run, readyBy: '2026-12-12' }] });
    expect(clash?.text).toMatch(
      /^With “Unmould” at Sun 29 Nov \d\d:\d\d, “Twelve cups: cured” can be Sun 3 Jan \d\d:\d\d at the earliest; it must be by Sat 12 Dec 00:00\.$/,
    );
    expect(clash?.either).toBe('There is a plan if “Twelve cups: cured” may be as late as Mon 4 Jan.');
    expect(plannedFrom({ ...file, runs: [{ ...run, readyBy: '2027-01-04' }] }).status).toBe('planned');
    expect(plannedFrom({ ...file, runs: [{ ...run, readyBy: '2027-01-03' }] }).status).toBe('conflict');
  });

  it('says of two waits at odds how long each might be', () => {
    const links = [...design.links, { from: 'pour-over', to: 'unmould', atLeastMin: 0, atMostMin: 600 }];
    const clash = clashOf({ ...file, designs: [{ ...design, links }] });
    expect(clash?.text).toMatch(
      /^With “Pour the upper layer” at Fri 27 Nov 19:07, “Unmould” can start Sun 29 Nov \d\d:\d\d at the earliest; it has to start by Sat 28 Nov 05:29\.$/,
    );
    expect(clash?.either).toBe(
      'There is a plan if either “Unmould” may start up to 46 h after “Pour the upper layer” instead of 10 h, or ' +
        'Upper layer is firm enough to unmould 10 h after the end of the pour instead of 46 h.',
    );
  });

  it('counts what is too few, and says when nothing alone is enough', () => {
    const due = { ...run, readyBy: '2027-01-04' };
    const two = {
      ...file,
      runs: [due, { ...due, key: 'more', title: 'Twelve more', startAfter: run.startAfter }],
    };
    const clash = clashOf(two);
    expect(clash?.ways.map(({ text }) => text)).toContain('you own 24 cavities of “cup” instead of 12');
    const moulds = file.moulds.map((mould) => ({ ...mould, cavities: 24 }));
    expect(plannedFrom({ ...two, moulds }).status).toBe('planned');
    const evenings = [{ from: '18:00', to: '22:00' }];
    const both = overnight('2026-11-27T18:00', { friday: evenings, monday: evenings, tuesday: evenings });
    const stuck = clashOf({ ...both, runs: [{ ...run, readyBy: '2026-12-12' }] });
    expect(stuck).toMatchObject({
      ways: [],
      either: 'No single one of these is enough to give way: more stands behind.',
    });
  });
});

describe('a stretch of time in words', () => {
  const at = (local: string): number => instantOf(local, ZONE) ?? 0;
  it.each([
    ['2026-12-01T02:10', '2026-12-01T06:40', 'Tue 1 Dec 02:10–06:40'],
    ['2026-12-01T22:10', '2026-12-02T06:40', 'Tue 1 Dec 22:10–Wed 2 Dec 06:40'],
    ['2026-12-01T22:10', '2026-12-01T22:10', 'Tue 1 Dec 22:10 only'],
  ])('from %s to %s is %s', (from, to, text) => {
    expect(rangeText(at(from), at(to), ZONE)).toBe(text);
  });

  it('says both days where the clock shows no later time, and nothing where nothing ends it', () => {
    const first = at('2026-10-25T01:30');
    expect(rangeText(first, first + 60, ZONE)).toBe('Sun 25 Oct 01:30–Sun 25 Oct 01:30');
    expect(rangeText(first, Infinity, ZONE)).toBe('from Sun 25 Oct 01:30 on');
  });
});
