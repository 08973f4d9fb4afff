import { instantOf } from '#hours';
import { plan, type Problem } from '#planner';
import { runFileInput } from '#runs';
import { planInFull } from '../../../libs/runs/plan/plan-run.js';
import { scheduleFaults } from '../../support/check-schedule.js';
import { atMost, watched, type Figure } from '../../support/figure.js';
import { loadRunFile } from '../../support/run-files.js';
import { timed } from '../../support/timed.js';

const DEMO = 'rockpool-tiles';
const SEED = 1;
const SCENARIOS = 2000;
const SECONDS = 5;

/** So many copies of the demo run that all want to begin at once: how soon there is a plan, and what it is worth after some time. */
export function likeRuns(): Figure[] {
  plan(problemOf(1), { seed: SEED, scenarios: SCENARIOS });
  return [
    { count: 10, bar: 0.5 },
    { count: 20, bar: 1 },
    { count: 50, bar: 4 },
  ].flatMap(({ count, bar }) => {
    const p = problemOf(count);
    const of = `${count} copies of the demo run`;
    const first = timed(() => plan(p, { seed: SEED, scenarios: SCENARIOS, stop: () => true }));
    const end = performance.now() + 1000 * SECONDS;
    const later = plan(p, { seed: SEED, scenarios: SCENARIOS, stop: () => performance.now() >= end });
    const outcomes = [first.value.outcome, later.outcome];
    const rejected = outcomes.filter(
      (outcome) => outcome.status !== 'planned' || scheduleFaults(p, outcome.schedule).length > 0,
    );
    return [
      atMost(`first plan, ${of}`, first.ms / 1000, 's', bar),
      watched(`odds of the first plan, ${of}`, 100 * (first.value.odds?.onTime ?? 0), '%', 'higher'),
      watched(`odds after ${SECONDS} s, ${of}`, 100 * (later.odds?.onTime ?? 0), '%', 'higher'),
      atMost(`missing or rejected plans, ${of}`, rejected.length, '', 0),
    ];
  });
}

/** Without a day to be ready by, which fifty cannot keep. */
function problemOf(count: number): Problem {
  const read = runFileInput(loadRunFile('demo', DEMO));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const [run] = read.value.runs;
  const now = instantOf(run?.startAfter ?? '', read.value.workshop.timeZone);
  if (run === undefined || now === undefined) throw new Error(`${DEMO} has no start`);
  const { readyBy: _day, ...order } = run;
  const runs = Array.from({ length: count }, (_, k) => ({ ...order, key: `${order.key}-${k + 1}` }));
  // Only what is asked of the planner is wanted, not an answer.
  const full = planInFull({ ...read.value, runs }, { now, scenarios: 1, stop: () => true });
  if (!full.ok) throw new Error(JSON.stringify(full.issues));
  return full.value.solved.problem;
}
