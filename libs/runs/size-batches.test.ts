import { describe, expect, it } from 'vitest';
import { planRuns } from '#runs';
import { minute, normalQuantile, seededRandom } from '#units';
import { loadRunFile } from '../../tests/support/run-files.js';
import { sizeBatches } from './size-batches.js';
import { workingsOf } from './workings.js';

const file = loadRunFile('demo', 'rockpool-tiles');

function amountsFor(count: number) {
  const [run] = workingsOf({ ...file, runs: file.runs.map((r) => ({ ...r, count })) });
  if (run === undefined) throw new Error('no run');
  const sized = sizeBatches(run);
  if (!sized.ok) throw new Error(JSON.stringify(sized.issues));
  return new Map(sized.value.map((part) => [part.part, part]));
}

describe('batch sizes', () => {
  it('add up: every gram of the batch is a named ingredient', () => {
    for (const { batch } of amountsFor(24).values()) {
      if (batch === undefined) continue;
      const { fatsG, naohG, waterG, sodiumLactateG, saltG, sugarG, fragranceG } = batch;
      const sum = fatsG + naohG + waterG + sodiumLactateG + saltG + sugarG + fragranceG;
      expect(sum).toBeCloseTo(batch.batchG, 9);
      expect(batch.fats.reduce((total, fat) => total + fat.massG, 0)).toBeCloseTo(fatsG, 9);
    }
  });

  it('run short in at most 5 % of simulated runs, and in no fewer than 3 %', () => {
    const foam = amountsFor(24).get('foam');
    const part = file.designs[0]?.parts.find((p) => p.key === 'foam');
    if (foam?.batch === undefined || part?.kind !== 'batch') throw new Error('no foam');
    const usable = foam.batch.batchMl - part.lossG / foam.batch.densityGPerMl;
    const random = seededRandom(7);
    const trials = 20_000;
    let short = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      let used = 0;
      for (let piece = 0; piece < 24; piece += 1) {
        const z = normalQuantile((random.next() + 2 ** -33) % 1 || 0.5);
        used += part.perPieceMl * (1 + (z * part.spreadPercent) / 100);
      }
      if (used > usable) short += 1;
    }
    // 5 % is what it is sized for; three standard errors of the simulation are 0.5 %.
    expect(short / trials).toBeLessThanOrEqual(0.055);
    expect(short / trials).toBeGreaterThanOrEqual(0.03);
  });

  it('grow with the count', () => {
    const some = amountsFor(24).get('foam')?.batch?.batchG ?? 0;
    expect(amountsFor(26).get('foam')?.batch?.batchG).toBeGreaterThan(some);
  });

  it('count decor by the piece and weigh it', () => {
    const shells = amountsFor(24).get('shells');
    expect(shells?.pieces).toBe(72); // 24 × 3
    expect(shells?.massG).toBeCloseTo(86.4, 9); // 72 × 1.2 g
  });

  it('warn of what is unusual', () => {
    const recipes = file.recipes.map((r) => ({ ...r, sodiumLactatePercent: 4, superfatPercent: 0 }));
    const [run] = workingsOf({ ...file, recipes });
    if (run === undefined) throw new Error('no run');
    const sized = sizeBatches(run);
    if (!sized.ok) throw new Error('not sized');
    const warnings = sized.value.find((p) => p.part === 'deep')?.warnings.join(' ');
    expect(warnings).toContain('Sodium lactate at 4 %');
    expect(warnings).toContain('superfat of 0 %');
  });

  it('warn where a fragrance seizes before all cavities are full', () => {
    const recipes = file.recipes.map((r) => ({
      ...r,
      fragrance: { percent: 3, behaviour: 'seizing' as const, vanillinPercent: 0 },
    }));
    const warnings = (input: typeof file) => {
      const result = planRuns(input, { now: minute(29_600_000), scenarios: 20 });
      if (!result.ok) throw new Error('not planned');
      return result.value.runs[0]?.amounts.find((p) => p.part === 'deep')?.warnings.join(' ');
    };
    expect(warnings({ ...file, recipes })).toMatch(
      /24 pieces take 6 min; the batter is at .* In time nine times out of ten: \d+\./,
    );
  });
});
