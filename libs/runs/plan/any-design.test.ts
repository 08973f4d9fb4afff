import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { pieceDesign, type PieceDesign, type RunPlan } from '#contract';
import { planRuns, type RunsInput } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');

/** What may be done beside pouring and unmoulding a base; the parts it takes follow from it. */
const extras = [
  ...['make-lye base', 'melt-fats base', 'mix base', 'split base', 'mist base', 'rest base', 'patch base'],
  ...['stamp base', 'zap-test base', 'label base', 'wrap base', 'dip coat', 'make-lye coat', 'mix coat'],
  ...['pipe foam', 'melt-fats foam', 'mix foam', 'glaze drops', 'press-decor shells', 'set-in shells'],
  ...['turn base', 'sprinkle base', 'cook base', 'rebatch base', 'melt-base star', 'unmould star'],
  ...['set-in star', 'set-in moon', 'mist moon'],
];
const making = {
  base: 'pour',
  coat: 'dip',
  foam: 'pipe',
  drops: 'glaze',
  shells: 'press-decor',
  star: 'pour',
  moon: 'pour',
} as const;
type PartKey = keyof typeof making;

const batch = (key: string, more: object) => ({ key, title: key, kind: 'batch', recipe: 'base', ...more });
const parts: Readonly<Record<PartKey, object>> = {
  base: batch('base', { perPieceMl: 60, mould: 'cup' }),
  coat: batch('coat', { perPieceMl: 10 }),
  foam: batch('foam', { perPieceMl: 8 }),
  drops: { key: 'drops', title: 'drops', kind: 'melt-and-pour', perPieceMl: 2 },
  star: { key: 'star', title: 'star', kind: 'melt-and-pour', perPieceMl: 5, mould: 'star' },
  moon: batch('moon', { perPieceMl: 5, mould: 'moon' }),
  shells: { key: 'shells', title: 'shells', kind: 'decor', perPiece: 1 },
};

/** A design whose stages are told in any order, with what they need to make sense: every part is made once. */
const designs = fc
  .subarray(extras, { minLength: 1 })
  .chain((some) => {
    const used = new Set(some.map((each) => each.split(' ')[1] as PartKey).concat('base'));
    const made = [...used].map((part) => `${making[part]} ${part}`);
    const cast = [...used].filter((part) => 'mould' in parts[part]).map((part) => `unmould ${part}`);
    const tests = some.some((each) => /^(cook|rebatch) /.test(each)) ? ['zap-test base'] : [];
    const all = [...new Set([...made, ...cast, ...tests, ...some])];
    return fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length });
  })
  .map((stages): PieceDesign => {
    const told = stages.map((each) => {
      const [kind = '', part = ''] = each.split(' ');
      const onto = kind === 'set-in' && (part === 'star' || part === 'moon') ? { onto: 'base' } : {};
      return { key: `${kind}-${part}`, title: each, kind, part, ...onto };
    });
    const used = Object.entries(parts).filter(([key]) => told.some(({ part }) => part === key));
    const { key, title } = file.designs[0]!;
    return pieceDesign.parse({ key, title, parts: used.map(([, part]) => part), stages: told });
  });

const rooms = fc.record({
  temperatureC: fc.integer({ min: 5, max: 35 }),
  humidityPercent: fc.constant(55),
  air: fc.constantFrom('still', 'usual', 'moving'),
});
const temperatures = fc.integer({ min: 28, max: 50 });

/** What nobody does the other way round, whatever the order in the list: common practice, no source. */
const before: readonly (readonly [first: string, then: string, leastMin: number])[] = [
  ['make-lye-base', 'mix-base', 1],
  ['melt-fats-base', 'mix-base', 1],
  ['make-lye-coat', 'mix-coat', 1],
  ['melt-fats-foam', 'mix-foam', 1],
  ['mix-base', 'pour-base', 0],
  ['mix-coat', 'dip-coat', 1],
  ['mix-foam', 'pipe-foam', 1],
  ['split-base', 'pour-base', 0],
  ['cook-base', 'pour-base', 0],
  ['cook-base', 'zap-test-base', 0],
  ['rebatch-base', 'zap-test-base', 0],
  ['rebatch-base', 'pour-base', 0],
  ['cook-base', 'rebatch-base', 0],
  ['melt-base-star', 'pour-star', 0],
  ['pour-star', 'unmould-star', 5],
  ['pour-moon', 'unmould-moon', 60],
  ['unmould-star', 'set-in-star', 0],
  ['unmould-moon', 'set-in-moon', 0],
  ['pour-base', 'set-in-star', 0],
  ['pour-base', 'unmould-base', 60],
  ['unmould-base', 'patch-base', 0],
  ['unmould-base', 'stamp-base', 0],
  ['unmould-base', 'turn-base', 0],
  ['unmould-base', 'wrap-base', 24 * 60],
  ['unmould-base', 'zap-test-base', 24 * 60],
  ['zap-test-base', 'wrap-base', 0],
  ['wrap-base', 'label-base', 0],
  ['press-decor-shells', 'set-in-shells', 0],
];

function outOfOrder(run: RunPlan): string[] {
  const times = new Map(run.stages.map((stage) => [stage.key, stage]));
  const isCooked = times.has('cook-base') || times.has('rebatch-base');
  const broken = before.flatMap(([first, then, least]) => {
    const [one, other] = [times.get(first), times.get(then)];
    if (one === undefined || other === undefined) return [];
    // What is cooked has no lye to lose in its cure, so it is tested on the day.
    if (first === 'unmould-base' && then === 'zap-test-base' && isCooked) return [];
    const gap = minuteOfIso(other.startAt) - minuteOfIso(one.endAt);
    return gap >= least ? [] : [`${then} ${String(gap)} min after ${first}`];
  });
  const handled = run.stages.flatMap((stage) => {
    const made = run.stages.find(({ kind, part }) => part === stage.part && kind === making[part as PartKey]);
    const isOfPot = stage.kind === 'zap-test' && isCooked;
    const prepares =
      isOfPot ||
      ['make-lye', 'melt-fats', 'melt-base', 'mix', 'split', 'cook', 'rebatch', 'rest'].includes(stage.kind);
    if (made === undefined || made === stage || prepares) return [];
    return minuteOfIso(stage.startAt) >= minuteOfIso(made.endAt) ? [] : [`${stage.key} before ${made.key}`];
  });
  return [...broken, ...handled];
}

it('has a plan in which nothing precedes what it needs, in a cold room or a hot one, or says why not', () => {
  let plans = 0;
  fc.assert(
    fc.property(designs, rooms, temperatures, (design, room, batterTemperatureC) => {
      const input: RunsInput = {
        ...file,
        workshop: { ...file.workshop, room },
        recipes: file.recipes.map((each) => ({ ...each, batterTemperatureC })),
        moulds: ['cup', 'star', 'moon'].map((key) => ({ ...file.moulds[0]!, key, title: key })),
        designs: [design],
      };
      const found = planRuns(input, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 10 });
      if (!found.ok) {
        expect(found.issues.map(({ code }) => code)).not.toEqual([]);
        return;
      }
      const { status, runs, conflict } = found.value;
      if (status === 'planned') plans += 1;
      else expect(conflict, design.stages.map(({ title }) => title).join(', ')).not.toBeNull();
      expect(outOfOrder(runs[0]!)).toEqual([]);
    }),
    { numRuns: 24, seed: 13 },
  );
  // A generator of nothing but conflicts would prove nothing.
  expect(plans).toBeGreaterThan(12);
});
