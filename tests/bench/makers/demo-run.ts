import { instantOf } from '#hours';
import { odds, plan, schedule, type Problem } from '#planner';
import { runFileInput } from '#runs';
import { planInFull } from '../../../libs/runs/plan/plan-run.js';
import { atMost, median, watched, type Figure } from '../../support/figure.js';
import { loadRunFile } from '../../support/run-files.js';
import { timed } from '../../support/timed.js';

const DEMO = 'rockpool-tiles';
const SEED = 1;
const SCENARIOS = 2000;
const ROUNDS = 41;

/** The demo run, warm and in this process: placed at each certainty, simulated, and the whole way from its file's content to the document. */
export function demoRun(): Figure[] {
  const read = runFileInput(loadRunFile('demo', DEMO));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const input = read.value;
  const now = instantOf(input.runs[0]!.startAfter, input.workshop.timeZone);
  if (now === undefined) throw new Error('no such time');
  const document = (): Problem => {
    const full = planInFull(input, { now, scenarios: SCENARIOS });
    if (!full.ok) throw new Error(JSON.stringify(full.issues));
    return full.value.solved.problem;
  };
  const p = document();
  const certainties = [0.9, 0.85, 0.8, 0.7, 0.6, 0.5];
  const placed = certainties.flatMap((certainty) => {
    const outcome = schedule(p, { certainty, seed: SEED });
    return outcome.status === 'planned' ? [outcome.schedule] : [];
  });
  const first = placed[0];
  if (first === undefined) throw new Error('the demo run has no plan');
  const of = `demo run, ${p.stages.length} stages`;
  return [
    atMost(
      `a plan at each of six certainties, median, ${of}`,
      medianMs(() => {
        for (const certainty of certainties) schedule(p, { certainty, seed: SEED });
      }),
      'ms',
      20,
    ),
    atMost(
      `odds over ${SCENARIOS} scenarios, median, ${of}`,
      medianMs(() => odds(p, first, { seed: SEED, scenarios: SCENARIOS })),
      'ms',
      20,
    ),
    atMost(
      `the best of those plans and its odds, median, ${of}`,
      medianMs(() => plan(p, { seed: SEED, scenarios: SCENARIOS })),
      'ms',
      40,
    ),
    watched(`from input to document, median, ${of}`, medianMs(document), 'ms', 'lower'),
  ];
}

function medianMs(call: () => unknown): number {
  for (let k = 0; k < ROUNDS; k++) call();
  return median(Array.from({ length: ROUNDS }, () => timed(call).ms));
}
