import { describe, expect, it } from 'vitest';
import { pieceDesign, type LogEntry, type PlanDocument, type Stage } from '#contract';
import { planRuns, type RunsInput } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const [cups] = file.designs;

const prepare = (part: string): object[] =>
  ['make-lye', 'melt-fats', 'mix'].map((kind) => ({
    ...{ key: `${kind}-${part}`, title: `${kind} ${part}`, kind, part },
  }));

/** The cups, with stages that prepare the batch of the lower layer. */
function prepared(more: Partial<RunsInput> = {}, stages: object[] = prepare('under')): RunsInput {
  const design = pieceDesign.parse({ ...cups!, stages: [...stages, ...cups!.stages] });
  return { ...file, designs: [design], ...more };
}

function plan(input: RunsInput): PlanDocument {
  const found = planRuns(input, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 200 });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.value;
}

const stagesOf = ({ runs }: PlanDocument) => runs[0]?.stages ?? [];
const keysOf = (document: PlanDocument): string[] => stagesOf(document).map(({ key }) => key);
const timeOf = (document: PlanDocument, key: string, field: 'startAt' | 'endAt'): number =>
  minuteOfIso(stagesOf(document).find((each) => each.key === key)?.[field] ?? '');
const likely = (document: PlanDocument, state: string): number =>
  document.runs[0]?.clocks.find((each) => each.part === 'under' && each.state === state)?.now.likely ?? NaN;

describe('a batch that is prepared at stages of its own', () => {
  const planned = plan(prepared());
  const start = (key: string): number => timeOf(planned, key, 'startAt');
  const end = (key: string): number => timeOf(planned, key, 'endAt');

  it('is mixed once its lye and fats have cooled, and poured while the batter flows', () => {
    expect(planned.status).toBe('planned');
    expect(likely(planned, 'lye-cool')).toBeGreaterThan(30);
    expect(start('mix-under') - end('make-lye-under')).toBeGreaterThanOrEqual(
      likely(planned, 'lye-cool') - 1,
    );
    expect(start('mix-under') - end('melt-fats-under')).toBeGreaterThanOrEqual(
      likely(planned, 'fats-cool') - 1,
    );
    expect(start('pour-under')).toBeGreaterThan(end('mix-under'));
    expect(start('pour-under') - end('mix-under')).toBeLessThanOrEqual(likely(planned, 'medium-trace'));
  });

  it('brings its cautions, and no risk that it is taken as ready', () => {
    const cautions = (key: string) => stagesOf(planned).find((each) => each.key === key)?.cautions;
    expect(cautions('make-lye-under')).toEqual([{ code: 'caution.lye' }, { code: 'caution.lye-making' }]);
    expect(cautions('melt-fats-under')).toEqual([{ code: 'caution.hot-fats' }]);
    const codes = (document: PlanDocument) =>
      document.runs[0]?.batches?.flatMap((batch) => batch.risks.map(({ code }) => code)) ?? [];
    expect(codes(planned)).not.toContain('lye.taken-ready');
    expect(codes(plan(prepared({}, prepare('under').slice(2))))).toContain('lye.taken-ready');
  });

  it('needs cold water in a warm room, ends nevertheless, and says so', () => {
    const { workshop, recipes } = file;
    const warm = prepared({
      workshop: { ...workshop, room: { ...workshop.room, temperatureC: 30 } },
      recipes: recipes.map((each) => ({ ...each, batterTemperatureC: 30 })),
    });
    const found = plan(warm);
    expect(found.status).toBe('planned');
    expect(found.runs[0]?.batches?.[0]?.risks).toContainEqual({
      ...{ code: 'lye.cold-bath', level: 'low', batterTemperatureC: 30, roomC: 30 },
    });
  });

  it('is not asked for once a part of it is made, and is done again for a batch made again', () => {
    const done: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:40:00Z' };
    const log = (...entries: LogEntry[]) =>
      prepared({ log: entries.map((entry) => ({ run: 'cups', entry })) });
    expect(keysOf(plan(log(done)))).not.toContain('make-lye-under');
    const seized: LogEntry = { kind: 'mishap', part: 'under', mishap: 'seized', at: '2026-11-27T18:41:00Z' };
    const again = plan(log(done, seized));
    expect(keysOf(again)).toContain('make-lye-under');
    const open = (key: string) =>
      minuteOfIso(
        stagesOf(again).find((each) => each.key === key && each.status === 'planned')?.startAt ?? '',
      );
    expect(open('mix-under')).toBeGreaterThan(open('make-lye-under') + 30);
    expect(open('pour-under')).toBeGreaterThan(open('mix-under'));
  });

  it('takes new lye and new fats for a batch made again, where the log tells of the first', () => {
    const entries: LogEntry[] = [
      { kind: 'done', stage: 'make-lye-under', at: '2026-11-27T13:00:00Z' },
      { kind: 'done', stage: 'melt-fats-under', at: '2026-11-27T15:00:00Z' },
      { kind: 'done', stage: 'mix-under', at: '2026-11-27T18:20:00Z' },
      { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:24:00Z' },
      { kind: 'mishap', part: 'under', mishap: 'seized', at: '2026-11-27T18:25:00Z' },
    ];
    const again = plan(prepared({ log: entries.map((entry) => ({ run: 'cups', entry })) }));
    const open = stagesOf(again).filter(({ status, part }) => status === 'planned' && part === 'under');
    expect(open.map(({ key, attempt }) => `${key}#${String(attempt)}`)).toEqual(
      expect.arrayContaining(['make-lye-under#2', 'melt-fats-under#2', 'mix-under#2', 'pour-under#2']),
    );
  });

  it('counts what the bowl loses once', () => {
    const slow = (stages: readonly Stage[]) =>
      stages.map((each) => (each.key === 'pour-under' ? { ...each, setupMin: 0, perPieceS: 12 } : each));
    const [design] = prepared().designs;
    const document = plan({ ...prepared(), designs: [{ ...design!, stages: slow(design!.stages) }] });
    const ofPour = document.weakLinks.filter(({ stage }) => stage === 'pour-under');
    expect(ofPour.map(({ why }) => why.code)).toEqual(['loss.batter']);
  });
});

it('is made in sittings of its own, so that no batter is wanted from lye that is still hot', () => {
  const document = plan(loadRunFile('ok', 'prepared-tiles'));
  expect(document.status).toBe('planned');
  const sittings = document.sittings.map(({ stages }) => stages.map(({ stage }) => stage));
  expect(sittings[0]).toEqual(expect.arrayContaining(['lye-deep', 'lye-sand', 'lye-foam']));
  expect(sittings[0]).not.toContain('mix-deep');
  for (const part of ['deep', 'sand', 'foam']) {
    const cooled = timeOf(document, `mix-${part}`, 'startAt') - timeOf(document, `lye-${part}`, 'endAt');
    // Lye of 36 % and more needs over an hour to be down at 29 °C: common practice, no source.
    expect(cooled, part).toBeGreaterThan(60);
  }
  // The sand is mixed when the layer below holds it, and poured before it is thick.
  expect(timeOf(document, 'mix-sand', 'startAt')).toBeGreaterThan(
    timeOf(document, 'pour-deep', 'endAt') + 20,
  );
  // Without a log bands are wide; batter held to the minute of a plan would leave 2 in 100.
  expect(document.odds?.soundByTheDay).toBeGreaterThan(0.1);
});

describe('a rest', () => {
  const rest = { key: 'rest', title: 'Dry', kind: 'rest', part: 'over', restMin: 1000 };
  const design = pieceDesign.parse({
    ...cups!,
    stages: cups!.stages.flatMap((each) => (each.key === 'turn' ? [rest, each] : [each])),
  });
  const planned = plan({ ...file, designs: [design] });

  it('lasts as long as it says, overnight and in no sitting, before what comes after it in the list', () => {
    const length = timeOf(planned, 'rest', 'endAt') - timeOf(planned, 'rest', 'startAt');
    expect(length).toBe(1000);
    expect(timeOf(planned, 'turn', 'startAt')).toBeGreaterThanOrEqual(timeOf(planned, 'rest', 'endAt'));
    expect(timeOf(planned, 'rest', 'startAt')).toBeGreaterThanOrEqual(timeOf(planned, 'unmould', 'endAt'));
    expect(planned.sittings.flatMap(({ stages }) => stages.map(({ stage }) => stage))).not.toContain('rest');
  });
});
