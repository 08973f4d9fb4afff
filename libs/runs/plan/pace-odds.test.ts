import { describe, expect, it } from 'vitest';
import type { PlanDocument, RunFile } from '#contract';
import { planRuns } from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { assessRuns } from '../assess-runs.js';
import type { AssessedRun } from '../assessed-run.js';
import { paceChance, withPaceOdds } from './pace-odds.js';

const file: RunFile = { ...loadRunFile('ok', 'plain-tiles'), earlier: [] };
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

/** The demo with slow hands, as it stands before the bowls are counted. */
function slow(): { document: PlanDocument; assessed: AssessedRun[] } {
  const designs = file.designs.map((design) => ({
    ...design,
    stages: design.stages.map((stage) => ({ ...stage, perPieceS: stage.kind === 'glaze' ? 25 : 20 })),
  }));
  const taken = assessRuns({ ...file, designs });
  if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
  const why = {
    code: 'loss.other',
    stage: { run: 'harbour-market', stage: 'patch', attempt: 1, title: 'Patch' },
  };
  const link = (share: number) => ({
    run: 'harbour-market',
    stage: 'patch',
    attempt: 1,
    share,
    loses: 'pieces' as const,
    why,
  });
  const odds = {
    soundAtAll: 0.8,
    soundByTheDay: 0.6,
    asPlanned: 0.5,
    standardError: 0.02,
    scenarios: 600,
    seed: 1,
  };
  return {
    document: { odds, weakLinks: [link(0.01), link(0.39), link(0)] } as unknown as PlanDocument,
    assessed: taken.value.map((each) => each.assessed),
  };
}

describe('what happens in the bowls', () => {
  it('takes its share of the odds, of their error and of what is lost elsewhere', () => {
    const { document, assessed } = slow();
    const pace = paceChance(assessed);
    expect(pace).toBeGreaterThan(0.05);
    expect(pace).toBeLessThan(0.9);
    const { odds, weakLinks } = withPaceOdds(document, assessed);
    expect(odds?.soundAtAll).toBeCloseTo(0.8 * pace, 12);
    expect(odds?.soundByTheDay).toBeCloseTo(0.6 * pace, 12);
    expect(odds?.asPlanned).toBeCloseTo(0.5 * pace, 12);
    expect(odds?.standardError).toBeCloseTo(0.02 * pace, 12);
    const bowls = weakLinks.filter(({ why }) => why.code === 'loss.batter');
    expect(bowls.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1 - pace, 12);
    const windows = weakLinks.filter(({ why }) => why.code !== 'loss.batter').map(({ share }) => share);
    expect(windows.map((share) => share / pace)).toEqual(
      [0.39, 0.01].map((each) => expect.closeTo(each, 12) as number),
    );
  });

  it('is told most first, with the time that it takes and the time there is', () => {
    const { document, assessed } = slow();
    const { weakLinks } = withPaceOdds(document, assessed);
    const shares = weakLinks.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    const foam = weakLinks.find(({ stage }) => stage === 'pipe-foam');
    // 24 pieces of 20 seconds.
    expect(foam?.why).toMatchObject({ code: 'loss.batter', part: { part: 'foam', attempt: 1 }, minutes: 8 });
    expect(foam?.why).toMatchObject({ leaves: { likely: expect.any(Number) as number } });
  });

  it('is nothing where there are no odds', () => {
    const { document, assessed } = slow();
    const none = { ...document, odds: null };
    expect(withPaceOdds(none, assessed)).toBe(none);
  });
});

describe('the odds of a plan', () => {
  it('hold the batter clock: slow hands lower them', () => {
    const [quick, slow] = [paced(4), paced(20)];
    expect(slow.odds?.soundByTheDay).toBeLessThan((quick.odds?.soundByTheDay ?? NaN) * 0.8);
  });

  it('are shared out: what is lost at the weak links and what is kept make one', () => {
    for (const seconds of [4, 12, 30]) {
      const { odds, weakLinks } = paced(seconds);
      const lost = weakLinks.reduce((sum, { share }) => sum + share, 0);
      expect((odds?.asPlanned ?? NaN) + lost).toBeCloseTo(1, 9);
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
