import { describe, expect, it } from 'vitest';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { cautionsOf, minutesIn, risksOf, sittingsOf, stretchOf, weakest } from './plan-facts.js';

const file = loadRunFile('ok', 'plain-tiles');
const planned = planRuns({ ...file }, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 100 });
if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
const plan = planned.value;

describe('what is told of a plan', () => {
  it('has every stage in one sitting, and no more minutes than stages take and pauses between', () => {
    const sittings = sittingsOf(plan);
    const keys = sittings.flatMap(({ stages }) => stages.map(({ key }) => key));
    expect([...keys].sort()).toEqual(plan.runs[0]?.stages.map(({ key }) => key).sort());
    const stages = sittings.flatMap((each) => each.stages);
    const atWork = stages.reduce((sum, s) => sum + (Date.parse(s.endAt) - Date.parse(s.startAt)) / 60_000, 0);
    expect(minutesIn(plan)).toBeGreaterThanOrEqual(atWork);
  });

  it('calls the weak link by its title', () => {
    expect(plan.weakLinks[0]?.stage).toBe('ready');
    expect(weakest(plan)).toMatchObject({ title: null, share: plan.weakLinks[0]?.share });
    const weakLinks = plan.weakLinks.filter(({ stage }) => stage !== 'ready');
    const stage = plan.runs[0]?.stages.find(({ key }) => key === weakLinks[0]?.stage);
    expect(weakest({ ...plan, weakLinks })?.title).toBe(stage?.title);
    expect(weakest({ ...plan, weakLinks: [] })).toBeUndefined();
  });

  it('says each caution and each risk once', () => {
    const codes = cautionsOf(plan).map(({ code }) => code);
    expect(codes).toContain('caution.lye');
    expect(new Set(codes).size).toBe(codes.length);
    const risks = risksOf(plan).map((risk) => JSON.stringify(risk));
    expect(risks.length).toBeGreaterThan(0);
    expect(new Set(risks).size).toBe(risks.length);
  });

  it('covers all starts', () => {
    const stages = plan.runs[0]?.stages ?? [];
    const [from, to] = stretchOf(stages);
    for (const { startAt } of stages) {
      expect(Date.parse(startAt)).toBeGreaterThanOrEqual(from);
      expect(Date.parse(startAt)).toBeLessThanOrEqual(to);
    }
  });
});
