import { describe, expect, it } from 'vitest';
import type { ClocksDocument, LogEntry, RunFile } from '#contract';
import {
  learnedFrom,
  planRuns,
  runFileInput,
  teachingsOf,
  writeClocks,
  type PastRun,
  type RunsInput,
} from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const demo = loadRunFile('ok', 'plain-tiles');
const file: RunFile = { ...demo, earlier: [] };
const run = 'harbour-market';

/** Minutes after the end of the pour of the sand layer, 27 November 20:00, as an instant. */
function after(hours: number): string {
  return new Date(Date.parse('2026-11-27T20:00:00Z') + hours * 3_600_000).toISOString();
}

const poured: LogEntry[] = [
  { kind: 'done', stage: 'pour-deep', startedAt: '2026-11-27T18:00:00Z', at: '2026-11-27T18:50:00Z' },
  { kind: 'done', stage: 'pour-sand', startedAt: '2026-11-27T19:30:00Z', at: '2026-11-27T20:00:00Z' },
];

const firm = (saw: 'not-yet' | 'already' | 'just-now', hours: number): LogEntry => ({
  kind: 'seen',
  part: 'sand',
  state: 'firm',
  saw,
  at: after(hours),
});

function clocksOf(input: RunsInput): ClocksDocument['runs'][number] {
  const written = writeClocks(input);
  if (!written.ok) throw new Error(JSON.stringify(written.issues));
  const [first] = written.value.runs;
  if (first === undefined) throw new Error('no run');
  return first;
}

function withLog(entries: readonly LogEntry[], past: readonly PastRun[] = []): RunsInput {
  const teachings = past.map((each) => teachingsOf(each, file.workshop).teachings);
  const learned = learnedFrom(teachings);
  return { ...file, learned, teachings, log: entries.map((entry) => ({ run, entry })) };
}

/** A run of the same design that is over. */
function pastWith(key: string, entries: readonly LogEntry[], ids: readonly string[] = []): PastRun {
  const [design] = file.designs;
  const [order] = file.runs;
  if (design === undefined || order === undefined) throw new Error('no run');
  const { recipes, fats, moulds } = file;
  const log = entries.map((entry, i) => ({ id: ids[i], entry }));
  return { order: { ...order, key }, design, recipes, fats, moulds, log };
}

const clockOf = (document: ClocksDocument['runs'][number], part: string, state: string) => {
  const found = document.parts.find((p) => p.part === part)?.clocks.find((c) => c.state === state);
  if (found === undefined) throw new Error(`no clock for ${state} of ${part}`);
  return found;
};

describe('what is seen of the batch that is there', () => {
  const before = clockOf(clocksOf(withLog(poured)), 'sand', 'firm');

  it('“not yet” moves its band later and cuts it off there', () => {
    const { now } = clockOf(clocksOf(withLog([...poured, firm('not-yet', 40)])), 'sand', 'firm');
    expect(now.low).toBeGreaterThan(40 * 60);
    expect(now.likely).toBeGreaterThan(before.band.likely);
  });

  it('“already” moves it earlier', () => {
    const { now } = clockOf(clocksOf(withLog([...poured, firm('already', 24)])), 'sand', 'firm');
    expect(now.high).toBeLessThan(24 * 60);
  });

  it('“just now” ends the doubt, and most of that about the states that go with it', () => {
    const seen = clocksOf(withLog([...poured, firm('just-now', 50)]));
    const { now } = clockOf(seen, 'sand', 'firm');
    expect(now.low / 60).toBeGreaterThan(49);
    expect(now.high / 60).toBeLessThan(51);
    const pliable = clockOf(seen, 'sand', 'pliable-until');
    expect(pliable.now.likely).toBeGreaterThan(pliable.band.likely);
    // They have a σ of about 0.12 of their own, so 80 % of them lie within ± 0.15.
    const width = (of: { low: number; high: number }) => Math.log(of.high / of.low);
    expect(width(pliable.now)).toBeGreaterThan(0.25);
    expect(width(pliable.now)).toBeLessThan(0.5 * width(pliable.band));
  });

  it('leaves the forecast and its reasons as they are: their product is the likely value', () => {
    const clock = clockOf(clocksOf(withLog([...poured, firm('not-yet', 40)])), 'sand', 'firm');
    expect(clock.band).toEqual(before.band);
    expect(clock.reasons.reduce((product, { factor }) => product * factor, clock.baseMin)).toBe(
      clock.band.likely,
    );
  });

  it('moves the plan: the unmoulding waits', () => {
    const bestOf = (input: RunsInput) => {
      const planned = planRuns(input, {
        now: minute(Date.parse(after(36)) / 60_000),
        scenarios: 100,
      });
      if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
      return planned.value.runs[0]?.stages.find(({ key }) => key === 'unmould')?.bestAt ?? '';
    };
    const waiting = bestOf(withLog([...poured, firm('not-yet', 48)]));
    expect(waiting > bestOf(withLog(poured))).toBe(true);
  });

  it.each([
    ['of a part that is not made', firm('just-now', 5), [], 'log.clock-not-started'],
    ['before its clock started', firm('just-now', -1), poured, 'log.before-clock'],
    [
      'of a coat in what was poured',
      { kind: 'seen', part: 'sand', state: 'coat-turnable', saw: 'already', at: after(9) },
      poured,
      'log.state-without-clock',
    ],
    [
      'of batter, without lye-in',
      { kind: 'seen', part: 'sand', state: 'medium-trace', saw: 'just-now', at: after(0) },
      poured,
      'log.clock-not-started',
    ],
    [
      'of decor',
      { kind: 'seen', part: 'shells', state: 'firm', saw: 'already', at: after(1) },
      poured,
      'part.unknown',
    ],
    [
      'of a glaze in soap',
      { kind: 'seen', part: 'sand', state: 'glaze-set', saw: 'already', at: after(1) },
      poured,
      'log.state-without-clock',
    ],
  ] as [string, LogEntry, LogEntry[], string][])('is refused %s', (_what, entry, first, code) => {
    const refused = writeClocks(withLog([...first, entry]));
    expect(refused.ok ? [] : refused.issues.map((issue) => issue.code)).toEqual([code]);
  });
});

describe('two looks that contradict each other', () => {
  it('are settled by the later, whatever kinds of entry they are', () => {
    const early = firm('already', 22);
    const late: LogEntry = { kind: 'not-yet', stage: 'unmould', at: after(38) };
    const { now } = clockOf(clocksOf(withLog([...poured, early, late])), 'sand', 'firm');
    expect(now.low).toBeGreaterThan(38 * 60);
  });

  it('are none where mixing for the layer began while the base was setting', () => {
    const entries: LogEntry[] = [
      { kind: 'done', stage: 'pour-deep', startedAt: '2026-11-27T18:00:00Z', at: '2026-11-27T18:50:00Z' },
      { kind: 'done', stage: 'pour-sand', startedAt: '2026-11-27T18:55:00Z', at: '2026-11-27T19:40:00Z' },
    ];
    const past = ['one', 'two', 'three', 'four', 'five'].map((key) => pastWith(key, entries));
    const holds = (before: PastRun[]) =>
      clockOf(clocksOf(withLog([], before)), 'deep', 'holds-layer').band.likely;
    expect(holds(past)).toBeGreaterThan(0.5 * holds([]));
  });
});

describe('what other runs have shown', () => {
  const unlearned = clockOf(clocksOf(withLog([])), 'sand', 'firm');
  const slow = (key: string) => pastWith(key, [...poured, firm('just-now', 70)]);

  it('teaches nothing where there is none', () => {
    expect(clocksOf(withLog([])).lessons).toEqual([]);
    expect(unlearned.reasons.some(({ rule }) => rule === 'lesson')).toBe(false);
  });

  it('moves the forecast towards it, narrows the band and says so among the reasons', () => {
    const taught = clockOf(clocksOf(withLog([], ['one', 'two', 'three'].map(slow))), 'sand', 'firm');
    expect(taught.band.likely).toBeGreaterThan(unlearned.band.likely * 1.3);
    expect(taught.sigma).toBeLessThan(unlearned.sigma);
    expect(taught.reasons.at(-1)).toMatchObject({ rule: 'lesson', evidence: { kind: 'bench log' } });
    expect(taught.reasons.reduce((product, { factor }) => product * factor, taught.baseMin)).toBe(
      taught.band.likely,
    );
  });

  it('can be traced to its entries, and forgotten entry by entry', () => {
    const entries = [...poured, firm('just-now', 70)];
    const ids = ['deep', 'sand', 'looked'];
    const { lessons } = clocksOf(withLog([], [pastWith('one', entries, ids)]));
    const set = lessons.find(({ pace, recipe }) => pace === 'set' && recipe === 'tile-base');
    expect(set?.observations).toEqual([
      {
        recipe: 'tile-base',
        entries: ['one/looked'],
        exact: expect.closeTo(70 / (unlearned.band.likely / 60), 6),
      },
    ]);
    const forget: LogEntry = { kind: 'forget', entry: 'looked', at: after(90) };
    const forgotten = clocksOf(withLog([], [pastWith('one', [...entries, forget], ids)]));
    expect(forgotten.lessons.filter(({ pace }) => pace === 'set')).toEqual([]);
    expect(clockOf(forgotten, 'sand', 'firm').band).toEqual(unlearned.band);
  });

  it('does not count an entry that was taken back', () => {
    const back: LogEntry = { kind: 'take-back', entry: '#3', at: after(90) };
    const past = pastWith('one', [...poured, firm('just-now', 70), back]);
    expect(clockOf(clocksOf(withLog([], [past])), 'sand', 'firm').band).toEqual(unlearned.band);
  });

  it('tells the workshop’s pace from its room: a cold week is no slow workshop', () => {
    const cold = { temperatureC: 12, humidityPercent: 55, air: 'usual' as const };
    const inRoom = (input: RunsInput) => clockOf(clocksOf(input), 'sand', 'firm');
    const asColdAsForecast = inRoom({ ...withLog([]), workshop: { ...file.workshop, room: cold } });
    const entries = [...poured, firm('just-now', asColdAsForecast.band.likely / 60)];
    const past = ['one', 'two', 'three'].map((key) => ({ ...pastWith(key, entries), room: cold }));
    expect(inRoom(withLog([], past)).band.likely).toBeCloseTo(unlearned.band.likely, 0);
  });

  it('of an earlier run must be possible, and says where it is not', () => {
    const [order] = file.runs;
    if (order === undefined) throw new Error('no run');
    const log = [{ entry: firm('just-now', 70) }];
    const input = runFileInput({ ...file, earlier: [{ run: { ...order, key: 'before' }, log }] });
    const refused = input.ok ? writeClocks(input.value) : input;
    expect(refused.ok ? [] : refused.issues.map(({ path }) => path)).toEqual([
      ['earlier', 0, 'log', 0, 'entry', 'state'],
    ]);
  });

  it('counts a batch that was made anew, and one that only ran short', () => {
    const seized: LogEntry = { kind: 'mishap', part: 'sand', mishap: 'seized', at: '2026-11-27T19:45:00Z' };
    const [deep, sand] = poured as [LogEntry, LogEntry];
    const anew = pastWith('one', [deep, seized, sand, firm('just-now', 70)]);
    expect(clocksOf(withLog([], [anew])).lessons.some(({ pace }) => pace === 'set')).toBe(true);
  });

  it('does not count a batch that went wrong', () => {
    const mishap: LogEntry = {
      kind: 'mishap',
      part: 'sand',
      mishap: 'cracked',
      response: 'carry-on',
      at: after(71),
    };
    const past = pastWith('one', [...poured, firm('just-now', 70), mishap]);
    expect(clocksOf(withLog([], [past])).lessons.filter(({ pace }) => pace === 'set')).toEqual([]);
  });

  it('is not taught to a run by its own batch, which its band already follows', () => {
    const own = clockOf(clocksOf(withLog([...poured, firm('just-now', 70)])), 'sand', 'firm');
    expect(own.band).toEqual(unlearned.band);
  });

  it('counts two looks at one batch as one batch', () => {
    const once = pastWith('one', [...poured, firm('just-now', 70)]);
    const twice = pastWith('one', [...poured, firm('not-yet', 50), firm('just-now', 70)]);
    const of = (past: PastRun) => clockOf(clocksOf(withLog([], [past])), 'sand', 'firm').band;
    expect(of(twice)).toEqual(of(once));
  });
});

describe('a lot on the scales', () => {
  const cured = (days: number, massG: number): LogEntry => ({
    kind: 'weigh-in',
    pieces: 6,
    massG,
    at: new Date(Date.parse('2026-11-30T18:30:00Z') + days * 86_400_000).toISOString(),
  });
  const made: LogEntry[] = [
    ...poured,
    { kind: 'done', stage: 'press-shells', at: '2026-11-27T21:40:00Z' },
    { kind: 'done', stage: 'unmould', at: '2026-11-29T10:00:00Z' },
    { kind: 'done', stage: 'patch', at: '2026-11-29T10:20:00Z' },
    { kind: 'done', stage: 'pipe-foam', at: '2026-11-29T11:20:00Z' },
  ];

  /** All that is done to the pieces, done: what is weighed before that would weigh the drops as a gain. */
  const finished: LogEntry[] = [
    ...made,
    { kind: 'done', stage: 'set-shells', at: '2026-11-29T11:32:00Z' },
    { kind: 'done', stage: 'drops', at: '2026-11-29T18:00:00Z' },
    { kind: 'done', stage: 'turn', at: '2026-11-30T18:10:00Z' },
    { kind: 'done', stage: 'stamp', at: '2026-11-30T18:25:00Z' },
  ];
  const readyOf = (entries: LogEntry[]) => {
    const planned = planRuns(withLog(entries), {
      now: minute(Date.parse('2026-12-20T00:00:00Z') / 60_000),
      scenarios: 50,
    });
    if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
    return planned.value.runs[0]?.ready?.likely ?? '';
  };

  it('is forecast by its weighings, and is cured once it stops losing weight', () => {
    const losing = clocksOf(withLog([...finished, cured(1, 530), cured(8, 505), cured(15, 492)])).cure;
    expect(losing.weighings).toBe(3);
    expect(losing.settled).toBe(false);
    expect(losing.readyDays?.likely).toBeGreaterThan(15);
    const settled = clocksOf(
      withLog([...finished, cured(1, 530), cured(8, 505), cured(15, 492), cured(40, 480), cured(47, 479.6)]),
    ).cure;
    expect(settled.settled).toBe(true);
  });

  it('moves the plan’s ready day both ways, once it was weighed for two weeks', () => {
    const clock = readyOf(finished);
    expect(clock).toMatch(/^202[67]/);
    const dry = [cured(1, 530), cured(8, 512), cured(15, 503), cured(22, 499)];
    const wet = [cured(1, 530), cured(8, 515), cured(15, 502), cured(22, 491)];
    expect(readyOf([...finished, ...dry]) < clock).toBe(true);
    expect(readyOf([...finished, ...wet]) > readyOf([...finished, ...dry])).toBe(true);
  });

  it('is never ready before it can be used, nor before it was seen to lose weight, nor on two early weighings', () => {
    const clock = readyOf(finished);
    expect(readyOf([...finished, cured(1, 530), cured(8, 529)])).toBe(clock);
    const usable = clockOf(clocksOf(withLog(finished)), 'foam', 'usable').now.likely;
    const slow = [...finished, cured(1, 530), cured(8, 527), cured(15, 525.5), cured(16, 525)];
    const begun = Date.parse('2026-11-29T11:20:00Z');
    expect(Date.parse(readyOf(slow))).toBeGreaterThanOrEqual(begun + usable * 60_000 - 60_000);
    expect(Date.parse(readyOf(slow))).toBeGreaterThanOrEqual(Date.parse('2026-12-14T18:00:00Z'));
  });

  it('follows what was seen of its cure', () => {
    const seen = (saw: 'not-yet' | 'just-now', at: string): LogEntry[] =>
      ['sand', 'deep', 'foam'].map((part) => ({ kind: 'seen', part, state: 'cured', saw, at }));
    expect(readyOf([...finished, ...seen('just-now', '2026-12-19T10:00:00Z')])).toMatch(/^2026-12-1[89]/);
    expect(readyOf([...finished, ...seen('not-yet', '2027-01-20T10:00:00Z')]) > '2027-01-20').toBe(true);
  });

  it('needs two weighings, of soap that cures', () => {
    expect(clocksOf(withLog([...finished, cured(1, 530)])).cure.note).toEqual({ code: 'cure.few-weighings' });
    const early = writeClocks(withLog([...poured, cured(1, 530)]));
    expect(early.ok ? [] : early.issues.map(({ code }) => code)).toEqual(['log.cure-not-begun']);
  });
});
