import { instantOf } from '#hours';
import { guarantee } from '#planner';
import { planInFull } from '../../libs/runs/plan/plan-run.js';
import { type Figure, median } from '../support/figure.js';
import { loadRunFile } from '../support/run-files.js';

const DEMOS = ['rockpool-tiles', 'orchard-loaves', 'honeycomb-tartlets'];
const ROUNDS = 200;

/** Does the guarantee of a plan, or the reasons why there is none, come at once? Per demo, after a warm-up. */
export function figures(): Figure[] {
  return DEMOS.map((demo) => {
    const now = instantOf('2026-11-27T18:00', 'Europe/Dublin');
    if (now === undefined) throw new Error('no such time');
    const full = planInFull(loadRunFile('demo', demo), { now, scenarios: 100 });
    if (!full.ok) throw new Error(JSON.stringify(full.issues));
    const { problem, outcome } = full.value.solved;
    if (outcome?.status !== 'planned') throw new Error(`${demo}: ${outcome?.status ?? 'too few'}`);
    const times = Array.from({ length: 2 * ROUNDS }, () => {
      const begun = performance.now();
      guarantee(problem, outcome.schedule);
      return performance.now() - begun;
    });
    return { name: demo, value: median(times.slice(ROUNDS)), unit: 'ms', bar: 2, better: 'lower' };
  });
}
