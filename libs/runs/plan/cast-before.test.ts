import { describe, expect, it } from 'vitest';
import { pieceDesign, type LogEntry, type MeltPart, type PieceDesign, type PlanDocument } from '#contract';
import { planRuns, type RunsInput } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'melt-embeds');
const [design] = file.designs as [PieceDesign];
const [order] = file.runs;

function plan(more: Partial<RunsInput> = {}): PlanDocument {
  const found = planRuns({ ...file, ...more }, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 200 });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.value;
}

function issuesOf(more: Partial<RunsInput>): string[] {
  const found = planRuns({ ...file, ...more }, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 10 });
  return found.ok ? [] : found.issues.map(({ code, path }) => `${code} ${path.join('.')}`);
}

const stageOf = (document: PlanDocument, key: string, run = 0) =>
  document.runs[run]?.stages.find((each) => each.key === key);
const start = (document: PlanDocument, key: string, run = 0): number =>
  minuteOfIso(stageOf(document, key, run)?.startAt ?? '');
const end = (document: PlanDocument, key: string, run = 0): number =>
  minuteOfIso(stageOf(document, key, run)?.endAt ?? '');
const firmAt = (document: PlanDocument): number =>
  document.runs[0]?.clocks.find(({ part, state }) => part === 'stars' && state === 'melt-firm')?.now.likely ??
  NaN;
const withPart = (change: object): PieceDesign[] => [
  pieceDesign.parse({ ...design, parts: [{ ...design.parts[0], ...change }, design.parts[1]] }),
];

describe('what is cast from melt-and-pour base and set in', () => {
  const planned = plan();

  it('is melted, cast, unmoulded once it has cooled, and lies ready before the soap is poured', () => {
    expect(planned.status).toBe('planned');
    expect(start(planned, 'cast')).toBeGreaterThanOrEqual(end(planned, 'melt'));
    expect(firmAt(planned)).toBeGreaterThan(15);
    expect(start(planned, 'free') - end(planned, 'cast')).toBeGreaterThanOrEqual(firmAt(planned) - 1);
    expect(start(planned, 'pour')).toBeGreaterThanOrEqual(end(planned, 'free'));
    expect(start(planned, 'set')).toBeGreaterThan(end(planned, 'pour'));
  });

  it('takes as much base as its cavities hold: 12 pieces of 2 cavities of 6 mL at 1.05 g/mL', () => {
    const amounts = planned.runs[0]?.amounts.find(({ part }) => part === 'stars');
    expect(amounts).toMatchObject({ neededMl: 144, lossG: 10, perPiece: { meanMl: 12 } });
    expect(amounts?.massG).toBeGreaterThan(144 * 1.05 + 10);
    expect(amounts?.massG).toBeLessThan(1.1 * (144 * 1.05 + 10));
  });

  it('brings the caution of hot base to where it is melted and cast, and none of lye', () => {
    for (const key of ['melt', 'cast'])
      expect(stageOf(planned, key)?.cautions, key).toEqual([{ code: 'caution.hot-base' }]);
    expect(stageOf(planned, 'pour')?.cautions).toEqual([{ code: 'caution.lye' }]);
  });

  it('holds its mould until it is out: two runs take turns where there are cavities for one', () => {
    const runs = [order!, { ...order!, key: 'more' }];
    const held = (document: PlanDocument, run: number) => [
      start(document, 'cast', run),
      end(document, 'free', run),
    ];
    const cups = { ...file.moulds[0]!, cavities: 24 };
    const scarce = plan({ runs, moulds: [cups, file.moulds[1]!] });
    const [first, then] = [held(scarce, 0), held(scarce, 1)].sort((a, b) => a[0]! - b[0]!);
    expect(then![0]).toBeGreaterThanOrEqual(first![1]!);
  });

  it('takes longer to cool the more a cavity holds', () => {
    const moulds = file.moulds.map((each) => (each.key === 'stars' ? { ...each, cavityMl: 60 } : each));
    expect(firmAt(plan({ moulds }))).toBeGreaterThan(1.8 * firmAt(planned));
  });

  it('has too few cavities where a piece takes more than there are', () => {
    const runs = [{ ...order!, count: 13 }];
    const moulds = file.moulds.map((each) => (each.key === 'cup' ? { ...each, cavities: 20 } : each));
    expect(plan({ runs, moulds }).runs[0]?.amounts[0]?.risks).toContainEqual(
      expect.objectContaining({ code: 'mould.too-few', needed: 26, owned: 24 }),
    );
  });

  it('is melted again with what ran short', () => {
    const log = [
      ['melt', '18:15'],
      ['cast', '18:30'],
    ].map(([stage, at]) => ({
      run: order!.key,
      entry: { kind: 'done', stage, at: `2026-11-27T${at!}:00Z` } as LogEntry,
    }));
    const short: LogEntry = {
      kind: 'mishap',
      part: 'stars',
      mishap: 'ran-short',
      pieces: 3,
      at: '2026-11-27T18:31:00Z',
    };
    const found = planRuns(
      { ...file, log: [...log, { run: order!.key, entry: short }] as RunsInput['log'] },
      { now: minuteOfIso('2026-11-27T18:32:00Z'), scenarios: 10 },
    );
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    const again = found.value.runs[0]?.stages.filter(({ attempt }) => attempt === 2);
    expect(again?.map(({ key }) => key).slice(0, 2)).toEqual(['melt', 'cast']);
  });

  it('is refused where its mould is not known, never emptied, or overfull', () => {
    expect(issuesOf({ designs: withPart({ mould: 'moon' }) })).toEqual([
      'mould.unknown designs.0.parts.0.mould',
    ]);
    const stages = design.stages.filter(({ key }) => key !== 'free');
    expect(issuesOf({ designs: [{ ...design, stages }] })).toEqual([
      'design.mould-never-freed designs.0.parts.0.mould',
    ]);
    expect(issuesOf({ designs: withPart({ amount: undefined, perPieceMl: 13 }) })).toEqual([
      'design.cavity-overfull designs.0.parts.0.perPieceMl',
    ]);
  });
});

describe('soap that is cast days before and set in', () => {
  const { material: _melted, ...cast } = design.parts[0] as MeltPart;
  const soap = { ...design, parts: [{ ...cast, kind: 'batch', recipe: 'base' }, design.parts[1]] };
  const stages = design.stages
    .filter(({ key }) => key !== 'melt')
    .map((stage) => (stage.key === 'set' ? { ...stage, onto: 'cup' } : stage));
  const designs = [pieceDesign.parse({ ...soap, stages })];

  it('is firm and out of its mould before what it goes into is poured', () => {
    const planned = plan({ designs });
    expect(start(planned, 'free') - end(planned, 'cast')).toBeGreaterThan(12 * 60);
    expect(start(planned, 'pour')).toBeGreaterThanOrEqual(end(planned, 'free'));
  });

  it('may be made on an earlier day by a link of its own', () => {
    const links = [{ from: 'free', to: 'pour', atLeastMin: 2 * 1440 }];
    const planned = plan({ designs: designs.map((each) => ({ ...each, links })) });
    expect(start(planned, 'pour') - end(planned, 'free')).toBeGreaterThanOrEqual(2 * 1440);
  });
});
