import { instantOf } from '#hours';
import type { RunsInput } from '#runs';
import { minute } from '#units';
import { assessRuns } from '../../libs/runs/assess-runs.js';
import type { AssessedRun } from '../../libs/runs/assessed-run.js';
import { buildNetwork } from '../../libs/runs/plan/build-network.js';
import type { Network } from '../../libs/runs/plan/network-references.js';
import { loadRunFile } from './run-files.js';

export const ZONE = 'Europe/Dublin';
const now = instantOf('2026-11-27T12:00', ZONE) ?? minute(0);
const file = loadRunFile('ok', 'two-layer');

/** The two-layer cups with a link that has an end, a wait that nothing opens, and a day. */
export const cups: RunsInput = {
  ...file,
  designs: file.designs.map((design) => ({
    ...design,
    links: [...design.links, { from: 'pour-under', to: 'pour-over', atLeastMin: 0, atMostMin: 240 }],
    waits: [...design.waits, { stage: 'turn', part: 'over', closes: 'pliable-until' }],
  })),
  runs: file.runs.map((run) => ({ ...run, readyBy: '2027-01-15' })),
};

/** The network of the first run of an input, with what it was made from. */
export function networkOf(input: RunsInput): Network & { readonly assessed: AssessedRun } {
  const taken = assessRuns(input);
  if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
  const runs = taken.value.map(({ assessed }) => assessed);
  return { ...buildNetwork(input, runs, { now }), assessed: runs[0]! };
}

const titles: Record<string, string> = {
  'pour-under': 'Pour the lower layer',
  'pour-over': 'Pour the upper layer',
  unmould: 'Unmould',
  turn: 'Turn',
};

/** A stage of the cups as reasons name it. */
export function stage(key: string): object {
  return { run: 'cups', stage: key, attempt: 1, title: titles[key] };
}

/** The cured lot as reasons name it. */
export const lot = { run: 'cups', stage: null, attempt: 1, title: 'Twelve cups' };
export const over = { run: 'cups', part: 'over', attempt: 1, title: 'Upper layer' };
export const under = { run: 'cups', part: 'under', attempt: 1, title: 'Lower layer' };

/** The planner's names of some lags, and of the lot. */
export const AT_LEAST_LINK = 'cups/links/0';
export const AT_MOST_LINK = 'cups/links/1';
export const POURED_ON = 'cups/waits/0';
export const FIRM = 'cups/waits/1';
export const PLIABLE = 'cups/waits/2';
export const READY = 'cups/=ready#1';
