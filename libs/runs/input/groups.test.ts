import { describe, expect, it } from 'vitest';
import type { RunGroup, RunOrder } from '#contract';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { checkGroups } from './check-groups.js';
import { withoutPieces, withPieces } from './pieces.js';
import { cavitiesOf, mouldUse, resolveRuns, type ResolvedRun } from './resolve-run.js';
import { piecesOfStage } from './stage-pieces.js';

const file = loadRunFile('ok', 'parting-ways');
const design = file.designs[0]!;
const order = file.runs[0]!;

const group = (key: string, count: number, ...parts: string[]): RunGroup => ({
  ...{ key, title: key, count, parts },
});

/** The run as these groups have it, perhaps with links or waits that the design says. */
function runOf(groups: RunGroup[] | undefined, more: Partial<typeof design> = {}): ResolvedRun {
  const [run] = resolveRuns({
    ...file,
    designs: [{ ...design, ...more }],
    runs: [{ ...order, groups }],
  });
  return run!;
}

/** What a stage waits for and comes after, as text. */
const asked = ({ design: { links, waits } }: ResolvedRun, stage: string): string[] => [
  ...links.flatMap(({ from, to }) => (to === stage ? [`after ${from}`] : [])),
  ...waits.flatMap((wait) =>
    wait.stage === stage
      ? [wait.opens ?? [], wait.closes ?? []].flat().map((state) => `${wait.part} ${state}`)
      : [],
  ),
];

const parted = [group('coated', 12, 'base', 'coat'), group('piped', 12, 'base', 'foam')];

/** What each stage waits for is what is on its own pieces: table of groups against stages. */
const hosts: readonly (readonly [string, RunGroup[] | undefined, Record<string, string[]>])[] = [
  [
    'all pieces alike: piped on the coat, dripped on the piping',
    undefined,
    {
      dip: ['after unmould', 'base takes-coat-until'],
      pipe: ['coat coat-turnable', 'coat takes-piping-until'],
      drip: ['foam piping-firm', 'foam takes-glaze-until'],
      turn: ['after unmould', 'coat coat-turnable', 'foam piping-turnable', 'drops glaze-turnable'],
    },
  ],
  [
    'some coated, some piped: each on the base',
    parted,
    {
      dip: ['after unmould', 'base takes-coat-until'],
      pipe: ['after unmould', 'base takes-piping-until'],
      drip: [],
      turn: ['after unmould', 'coat coat-turnable', 'foam piping-turnable'],
    },
  ],
  [
    'drops on coats of one group and on piping of the other: both are waited for',
    [group('coated', 12, 'base', 'coat', 'drops'), group('piped', 12, 'base', 'foam', 'drops')],
    {
      drip: [
        ...['coat coat-turnable', 'coat takes-glaze-until'],
        ...['foam piping-firm', 'foam takes-glaze-until'],
      ],
    },
  ],
  [
    'drops on the coats alone: nothing of the piping counts',
    [group('coated', 12, 'base', 'coat', 'drops'), group('piped', 12, 'base', 'foam')],
    { drip: ['coat coat-turnable', 'coat takes-glaze-until'] },
  ],
];

describe('what a stage waits for where pieces part ways', () => {
  it.each(hosts)('%s', (_, groups, expected) => {
    const run = runOf(groups);
    for (const [stage, said] of Object.entries(expected)) {
      expect(new Set(asked(run, stage)), stage).toEqual(new Set(said));
    }
  });

  it('puts it on what is there where the part that the stage names is on other pieces', () => {
    const stages = design.stages.map((stage) => (stage.key === 'pipe' ? { ...stage, onto: 'coat' } : stage));
    expect(asked(runOf(parted, { stages }), 'pipe')).toEqual(['after unmould', 'base takes-piping-until']);
  });

  it('holds what the design says only where a piece has both, and keeps the order of the rest', () => {
    const run = runOf(parted, {
      waits: [{ stage: 'pipe', part: 'coat', opens: 'coat-turnable' }],
      links: [
        { from: 'unmould', to: 'dip', atLeastMin: 30 },
        { from: 'dip', to: 'pipe', atLeastMin: 720 },
      ],
    });
    expect(asked(run, 'pipe')).not.toContain('coat coat-turnable');
    expect(run.design.links).toContainEqual({ from: 'unmould', to: 'dip', atLeastMin: 30 });
    expect(run.design.links).toContainEqual({ from: 'unmould', to: 'pipe', atLeastMin: 0 });
    expect(run.design.links.filter(({ from }) => from === 'dip')).toEqual([]);
  });
});

describe('for how many pieces', () => {
  it('is what groups with the part have, of a stage as of a part', () => {
    const run = runOf([group('coated', 10, 'base', 'coat'), group('piped', 14, 'base', 'foam')]);
    const counts = run.design.stages.map((stage) => `${stage.key} ${piecesOfStage(run, stage)}`);
    expect(counts).toEqual(['pour 24', 'unmould 24', 'dip 10', 'pipe 14', 'turn 24', 'wrap 24']);
    expect(run.leftOut.map(({ key }) => key)).toEqual(['drops']);
  });

  it('counts all that is in the cavities for what handles them', () => {
    const top = { ...design.parts[0]!, key: 'top', title: 'Top' };
    const run = runOf([group('topped', 10, 'base', 'top'), group('plain', 14, 'base')], {
      parts: [...design.parts, top],
      stages: [
        ...design.stages.slice(0, 1),
        { ...design.stages[0]!, key: 'layer', kind: 'layer', part: 'top' },
        { ...design.stages[1]!, part: 'top' },
      ],
    });
    const counts = run.design.stages.map((stage) => `${stage.key} ${piecesOfStage(run, stage)}`);
    expect(counts).toEqual(['pour 24', 'layer 10', 'unmould 24']);
  });

  it('empties and mixes what is made, also where the stage is said of a part that is not', () => {
    const [base, coat, ...others] = design.parts;
    const poured = { ...base!, batch: 'blue' } as typeof base;
    const top = { ...poured!, key: 'top', title: 'Top' } as typeof base;
    const run = runOf([group('plain', 24, 'base')], {
      parts: [poured!, top!, coat!, ...others],
      stages: [
        { ...design.stages[0]!, key: 'mix', kind: 'mix', part: 'top' },
        design.stages[0]!,
        { ...design.stages[0]!, key: 'layer', kind: 'layer', part: 'top' },
        { ...design.stages[1]!, part: 'top' },
      ],
    });
    const told = run.design.stages.map((stage) => `${stage.key} ${stage.part} ${piecesOfStage(run, stage)}`);
    expect(told).toEqual(['mix base 24', 'pour base 24', 'unmould base 24']);
    expect(asked(run, 'unmould')).toContain('base firm');
  });

  it('cuts no two kinds of pieces from one block', () => {
    const [base, ...others] = design.parts;
    const block = { ...base!, piecesPerCavity: 8 } as typeof base;
    const top = { ...block!, key: 'top', title: 'Top' };
    const parts = [block!, top, ...others];
    const stages = [
      ...design.stages,
      { ...design.stages[0]!, key: 'layer', kind: 'layer' as const, part: 'top' },
    ];
    const cavities = (groups: RunGroup[]): number => {
      const run = runOf(groups, { parts, stages });
      return cavitiesOf(run, mouldUse(run.design, 'cup')!);
    };
    expect(cavities([group('all', 24, 'base')])).toBe(3);
    expect(cavities([group('topped', 12, 'base', 'top'), group('plain', 12, 'base')])).toBe(4);
    expect(cavities([group('dipped', 12, 'base', 'coat'), group('plain', 12, 'base')])).toBe(3);
  });
});

describe('what groups can have against them', () => {
  const issues = (...groups: RunGroup[]): string[] =>
    checkGroups({ ...order, groups }, design).map(({ code, path }) => `${path.join('.')} ${code}`);
  it.each([
    ['nothing', [], parted],
    ['a sum that is not the count', ['groups run.groups-sum'], [group('all', 23, 'base')]],
    [
      'a name that is taken',
      ['groups.1.key input.repeated-key'],
      [group('half', 12, 'base'), group('half', 12, 'base')],
    ],
    ['a part twice', ['groups.0.parts.1 run.group-part-twice'], [group('all', 24, 'base', 'base')]],
    ['a part of no design', ['groups.0.parts.1 part.unknown'], [group('all', 24, 'base', 'lid')]],
    ['a coat on nothing', ['groups.0.parts.0 run.group-without-host'], [group('all', 24, 'coat')]],
  ] as const)('%s', (_, expected, groups) => {
    expect(issues(...groups)).toEqual(expected);
  });
});

describe('fewer pieces', () => {
  const sizes = ({ groups = [] }: RunOrder): number[] => groups.map(({ count }) => count);
  const three: RunOrder = {
    ...order,
    groups: [group('a', 20, 'base'), group('b', 3, 'base'), group('c', 1, 'base')],
  };

  it.each([
    [24, [20, 3, 1]],
    [12, [10, 1, 1]],
    [3, [1, 1, 1]],
    [48, [40, 6, 2]],
  ])('%i of 24 shrink each group in proportion, none to nothing', (count, expected) => {
    expect(sizes(withPieces(three, count))).toEqual(expected);
  });

  it('are two runs of what they were together', () => {
    const first = withPieces(three, 12);
    expect(sizes(withoutPieces(three, first))).toEqual([10, 2]);
    expect(withoutPieces(three, first).count).toBe(12);
  });
});
