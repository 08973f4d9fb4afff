import { describe, expect, it } from 'vitest';
import type { PlanDocument, RunFile } from '#contract';
import { planRuns } from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file: RunFile = { ...loadRunFile('demo', 'rockpool-tiles'), earlier: [] };
const now = minute(Date.parse('2026-11-27T18:00:00Z') / 60_000);

/** The demo with some seconds for each piece at the stages that pour, layer and pipe. */
function paced(seconds: number, log: RunFile['log'] = []): PlanDocument {
  const designs = file.designs.map((design) => ({
    ...design,
    stages: design.stages.map((stage) =>
      ['pour', 'layer', 'pipe'].includes(stage.kind) ? { ...stage, perPieceS: seconds } : stage,
    ),
  }));
  const planned = planRuns({ ...file, designs, log }, { now, scenarios: 500 });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  return planned.value;
}

describe('the odds of a plan', () => {
  it('hold the batter clock: slow hands lower them', () => {
    const [quick, slow] = [paced(4), paced(20)];
    expect(slow.odds?.probability).toBeLessThan((quick.odds?.probability ?? NaN) * 0.8);
  });

  it('are shared out: what is lost at the weak links and what is kept make one', () => {
    for (const seconds of [4, 12, 30]) {
      const { odds, weakLinks } = paced(seconds);
      const lost = weakLinks.reduce((sum, { share }) => sum + share, 0);
      expect((odds?.probability ?? NaN) + lost).toBeCloseTo(1, 9);
    }
  });

  it('name the stage that is pressed most among batches of one recipe, once', () => {
    const plan = paced(20);
    const links = plan.weakLinks.filter(({ why }) => why.code === 'loss.batter');
    const filling = plan.runs[0]?.filling ?? [];
    const layers = filling.filter(({ part }) => part !== 'foam').sort((a, b) => a.chance - b.chance);
    expect(layers).toHaveLength(2);
    expect(links.map(({ stage }) => stage).sort()).toEqual(['pipe-foam', layers[0]?.stage]);
  });

  it('count nothing for a batch that is poured already', () => {
    const done = ['pour-deep', 'pour-sand'].map((stage, i) => ({
      run: 'harbour-market',
      entry: { kind: 'done' as const, stage, at: `2026-11-27T1${String(6 + i)}:30:00Z` },
    }));
    const links = paced(20, done).weakLinks.filter(({ why }) => why.code === 'loss.batter');
    expect(links.map(({ stage }) => stage)).toEqual(['pipe-foam']);
  });

  it('are untouched where no time is told for a piece', () => {
    const plan = paced(0);
    expect(plan.weakLinks.some(({ why }) => why.code === 'loss.batter')).toBe(false);
    expect(plan.runs[0]?.filling).toEqual([]);
  });
});
