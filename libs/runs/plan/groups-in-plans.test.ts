import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decorPart } from '#contract';
import type { LogEntry, PlanDocument, RunFile, RunGroup } from '#contract';
import { planRuns, runFileInput, writeBatchSheet, type RunsInput } from '#runs';
import { minute, minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const now = minuteOfIso('2026-11-27T17:00:00Z');
const file = loadRunFile('ok', 'parting-ways');
const order = file.runs[0]!;
const design = file.designs[0]!;

function inputOf(more: Partial<RunFile> = {}): RunsInput {
  const input = runFileInput({ ...file, ...more });
  if (!input.ok) throw new Error(JSON.stringify(input.issues));
  return input.value;
}

function planOf(input: RunsInput, scenarios = 100): PlanDocument {
  const plan = planRuns(input, { now: minute(now), scenarios });
  if (!plan.ok) throw new Error(JSON.stringify(plan.issues));
  return plan.value;
}

const logged = (...entries: LogEntry[]): Partial<RunFile> => ({
  log: entries.map((entry) => ({ run: 'cups', entry })),
});

const done = (stage: string, at: string): LogEntry => ({ kind: 'done', stage, at });
const begun = [
  done('pour', '2026-11-27T18:40:00Z'),
  done('unmould', '2026-11-29T18:20:00Z'),
  done('dip', '2026-11-29T19:00:00Z'),
  done('pipe', '2026-11-29T20:00:00Z'),
];

/** Stages of the one run with the pieces they are done for, as text. */
const stagesOf = (plan: PlanDocument): string[] =>
  plan.runs[0]!.stages.map(({ key, attempt, pieces, groups, status }) =>
    `${key} ${attempt} ${status} ${pieces ?? 'all'} ${groups?.join('+') ?? ''}`.trim(),
  );

describe('a plan for pieces that part ways', () => {
  const [run] = planOf(inputOf()).runs;

  it('says for how many pieces and which groups a stage is done, where it is not all', () => {
    expect(stagesOf(planOf(inputOf())).sort()).toEqual([
      'dip 1 planned 12 coated',
      'pipe 1 planned 12 piped',
      'pour 1 planned all',
      'turn 1 planned all',
      'unmould 1 planned all',
      'wrap 1 planned all',
    ]);
    expect(run!.groups).toEqual(order.groups);
    expect(run!.leftOut).toEqual([{ part: 'drops', title: 'Drops' }]);
  });

  it('takes the hands as long as the pieces of a stage need', () => {
    const minutes = (key: string): number => {
      const stage = run!.stages.find((each) => each.key === key)!;
      return minuteOfIso(stage.endAt) - minuteOfIso(stage.startAt);
    };
    expect(['pour', 'dip', 'pipe'].map(minutes)).toEqual([30 + 4, 30 + 3, 30 + 8]);
  });

  it('makes each part, and fills, for the pieces that have it', () => {
    const counts = run!.amounts.map(({ part, count }) => `${part} ${count}`);
    expect(counts).toEqual(['base 24', 'coat 12', 'foam 12']);
    const filling = run!.filling.map(({ part, neededMin }) => `${part} ${neededMin}`);
    expect(filling).toEqual(['base 4', 'coat 3', 'foam 8']);
  });

  it('pipes onto the base, whatever the coat does', () => {
    const waits = run!.added!.filter(({ stage }) => stage === 'pipe');
    expect(waits).toEqual([
      { stage: 'pipe', part: 'base', closes: 'takes-piping-until' },
      { stage: 'pipe', after: 'unmould' },
    ]);
    const alike = planOf(inputOf({ runs: [{ ...order, groups: undefined }] })).runs[0]!;
    expect(alike.added).toContainEqual({ stage: 'pipe', part: 'coat', opens: 'coat-turnable' });
  });

  it('takes a log in which the piping was done before the coat', () => {
    const [pour, unmould, , pipe] = begun;
    expect(stagesOf(planOf(inputOf(logged(pour!, unmould!, pipe!))))).toContain('pipe 1 done 12 piped');
  });
});

describe('what goes wrong with pieces of a group', () => {
  const mishap = (part: string, more: object): LogEntry => ({
    ...{ kind: 'mishap', part, mishap: 'cracked', response: 'remake', at: '2026-11-29T20:10:00Z' },
    ...more,
  });
  const again = (entry: LogEntry): string[] =>
    stagesOf(planOf(inputOf(logged(...begun, entry))))
      .filter((text) => text.includes(' 2 '))
      .sort();

  it('is made again for them, and for no other group', () => {
    expect(again(mishap('base', { group: 'piped', pieces: 3 }))).toEqual([
      'pipe 2 planned 3 piped',
      'pour 2 planned 3',
      'unmould 2 planned 3',
    ]);
    expect(again(mishap('base', { group: 'piped' }))).toEqual([
      'pipe 2 planned 12 piped',
      'pour 2 planned 12',
      'unmould 2 planned 12',
    ]);
  });

  it('is made again for as many of any group where none is named', () => {
    expect(again(mishap('base', { pieces: 3 }))).toEqual([
      'dip 2 planned 3 coated',
      'pipe 2 planned 3 piped',
      'pour 2 planned 3',
      'unmould 2 planned 3',
    ]);
    expect(again(mishap('coat', { pieces: 20 }))).toEqual(['dip 2 planned 12 coated']);
  });

  const refused = (entry: LogEntry): string[] => {
    const plan = planRuns(inputOf(logged(...begun, entry)), { now: minute(now), scenarios: 10 });
    return plan.ok ? [] : plan.issues.map(({ code, path }) => `${path.join('.')} ${code}`);
  };

  it('must be of a group that has the part, and left out only where no other has it', () => {
    expect(refused(mishap('coat', { group: 'piped' }))).toEqual(['log.4.entry.group group.unknown']);
    expect(refused(mishap('base', { group: 'piped', response: 'drop-part' }))).toEqual([
      'log.4.entry.group log.dropped-of-one-group',
    ]);
    expect(refused(mishap('foam', { group: 'piped', response: 'drop-part' }))).toEqual([]);
  });

  it('leaves the other groups as they are once a part is left out', () => {
    const [pour, unmould] = begun;
    const entry = mishap('coat', { response: 'drop-part' });
    expect(stagesOf(planOf(inputOf(logged(pour!, unmould!, entry)))).sort()).toEqual([
      'pipe 1 planned 12 piped',
      'pour 1 done all',
      'turn 1 planned all',
      'unmould 1 done all',
      'wrap 1 planned all',
    ]);
  });
});

/** With shells that are bought, so that no stage makes them. */
const shelled = {
  ...design,
  parts: [...design.parts, decorPart.parse({ key: 'shells', title: 'Shells', kind: 'decor', perPiece: 2 })],
};

/** Groups of a run, each with the base and whatever else. */
const anyGroups = fc
  .array(
    fc.record({
      count: fc.integer({ min: 1, max: 24 }),
      parts: fc.subarray(['coat', 'foam', 'drops', 'shells']),
    }),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .map((groups): RunGroup[] =>
    groups.map(({ count, parts }, i) => ({
      ...{ key: `group-${i}`, title: `Group ${i}`, count, parts: ['base', ...parts] },
    })),
  );
const total = (groups: readonly RunGroup[]): number => groups.reduce((sum, { count }) => sum + count, 0);

describe('any groups', () => {
  it('come to what the amounts say, part by part and all together', () => {
    fc.assert(
      fc.property(anyGroups, (groups) => {
        const input = inputOf({ designs: [shelled], runs: [{ ...order, count: total(groups), groups }] });
        const sheet = writeBatchSheet(input);
        if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
        const { amounts } = sheet.value.runs[0]!;
        const asked = groups.flatMap((group) => group.parts.map(() => group.count));
        expect(amounts.reduce((sum, { count }) => sum + count, 0)).toBe(asked.reduce((a, b) => a + b));
        for (const { part, count, neededMl, perPiece } of amounts) {
          expect(count).toBe(total(groups.filter(({ parts }) => parts.includes(part))));
          if (perPiece !== undefined) expect(neededMl).toBeCloseTo(count * perPiece.meanMl, 9);
        }
        const made = new Set(amounts.map(({ part }) => part));
        const left = sheet.value.runs[0]!.leftOut?.map(({ part }) => part) ?? [];
        expect([...made, ...left].sort()).toEqual(shelled.parts.map(({ key }) => key).sort());
      }),
      { numRuns: 40 },
    );
  });

  it('cost together what the run costs, and a piece with more parts no less', () => {
    fc.assert(
      fc.property(anyGroups, (groups) => {
        const sheet = writeBatchSheet(
          inputOf({ designs: [shelled], runs: [{ ...order, count: total(groups), groups }] }),
        );
        if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
        const { cost } = sheet.value.runs[0]!;
        const sum = cost.groups!.reduce((all, { count, perPiece }) => all + count * perPiece, 0);
        expect(cost.materials).toBeGreaterThan(0);
        expect(cost.work).toBeGreaterThan(0);
        expect(sum).toBeCloseTo(cost.perPiece * total(groups), 6);
        const costOf = (key: string): number => cost.groups!.find(({ group }) => group === key)!.perPiece;
        for (const more of groups) {
          for (const less of groups) {
            if (less.parts.every((part) => more.parts.includes(part))) {
              expect(costOf(more.key)).toBeGreaterThanOrEqual(costOf(less.key) - 1e-9);
            }
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it('weigh no more than as many pieces with all parts, and no less than with the base alone', () => {
    fc.assert(
      fc.property(anyGroups, (groups) => {
        const mass = (own: RunGroup[]): number => {
          const input = inputOf({
            designs: [shelled],
            runs: [{ ...order, count: total(groups), groups: own }],
          });
          const sheet = writeBatchSheet(input);
          if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
          return sheet.value.gather.lines.reduce((sum, { needed }) => sum + needed, 0);
        };
        const all = (...parts: string[]): RunGroup[] => [
          { key: 'all', title: 'All', count: total(groups), parts },
        ];
        const own = mass(groups);
        expect(own).toBeGreaterThanOrEqual(mass(all('base')) - 1e-9);
        expect(own).toBeLessThanOrEqual(mass(all('base', 'coat', 'foam', 'drops', 'shells')) + 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  it.each(['demo/orchard-loaves', 'demo/honeycomb-tartlets', 'ok/parting-ways'] as const)(
    'that are one with all parts make the same plan of %s as none',
    (path) => {
      const [kind, name] = path.split('/') as ['demo' | 'ok', string];
      const own = loadRunFile(kind, name);
      const without = own.runs.map((each) => ({ ...each, groups: undefined }));
      const grouped = without.map((each) => {
        const parts = own.designs.find(({ key }) => key === each.design)!.parts.map(({ key }) => key);
        return { ...each, groups: [{ key: 'all', title: 'All', count: each.count, parts }] };
      });
      const plan = (runs: RunFile['runs']): PlanDocument => {
        const input = runFileInput({ ...own, runs });
        if (!input.ok) throw new Error(JSON.stringify(input.issues));
        return planOf(input.value, 50);
      };
      const told = plan(grouped);
      expect(told.runs.map(({ groups }) => groups?.length)).toEqual(grouped.map(() => 1));
      expect({ ...told, runs: told.runs.map(({ groups: _groups, ...rest }) => rest) }).toEqual(plan(without));
    },
  );
});
