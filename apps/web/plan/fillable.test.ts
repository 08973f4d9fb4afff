import { describe, expect, it } from 'vitest';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { fillingsOf, mostPieces } from './fillable.js';

describe('whether the moulds can be filled', () => {
  it('counts a cavity that several layers share once', () => {
    const { designs, moulds } = loadRunFile('demo', 'orchard-loaves');
    const [design] = designs;
    expect(fillingsOf(design!, moulds, 11)).toEqual([
      { mould: 'loaf', title: moulds[0]?.title, owned: 2, needed: 2, mostPieces: 20 },
    ]);
    expect(mostPieces(design!, moulds)).toBe(20);
    expect(mostPieces(design!, [])).toBe(0);
  });

  it('counts every cavity of a piece that is put together from several', () => {
    const { designs, moulds } = loadRunFile('ok', 'two-layer');
    const parts = designs[0]!.parts.map((part) =>
      part.kind === 'batch' ? { ...part, cavitiesPerPiece: 5 } : part,
    );
    expect(fillingsOf({ ...designs[0]!, parts }, moulds, 3)).toMatchObject([
      { owned: 12, needed: 15, mostPieces: 2 },
    ]);
  });

  it('counts only pieces with something in the mould, and no two kinds in one cavity', () => {
    const { designs, moulds } = loadRunFile('ok', 'parting-ways');
    const parts = designs[0]!.parts.map((part) =>
      part.key === 'base' || part.key === 'coat' ? { ...part, mould: 'cup', piecesPerCavity: 8 } : part,
    ) as (typeof designs)[0]['parts'];
    const needed = (...groups: [number, string][]): number | undefined =>
      fillingsOf(
        { ...designs[0]!, parts },
        moulds,
        24,
        groups.map(([count, own]) => ({ key: own, title: own, count, parts: own.split(' ') })),
      )[0]?.needed;
    expect(needed([24, 'base'])).toBe(3);
    expect(needed([12, 'base coat'], [12, 'base'])).toBe(4);
    expect(needed([12, 'base foam'], [12, 'base'])).toBe(3);
    expect(needed([12, 'base'], [12, 'foam'])).toBe(2);
  });

  it.each(['orchard-loaves', 'rockpool-tiles', 'honeycomb-tartlets'])(
    'is as the planner sees it: %s',
    (name) => {
      const file = loadRunFile('demo', name);
      const most = mostPieces(file.designs[0]!, file.moulds);
      const reasons = (count: number) => {
        const runs = [{ ...file.runs[0]!, count }];
        const plan = planRuns({ ...file, runs }, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 1 });
        return plan.ok ? plan.value.conflict.map(({ code }) => code) : ['issues'];
      };
      expect(reasons(most)).not.toContain('conflict.too-few');
      expect(reasons(most + 1)).toContain('conflict.too-few');
    },
  );
});
