import { instantOf } from '#hours';
import type { RunFile } from '#contract';
import { minute } from '#units';
import { loadRunFile } from './run-files.js';

export const ZONE = 'Europe/Dublin';
export const NOON = instantOf('2026-11-27T12:00', ZONE) ?? minute(0);
const file = loadRunFile('ok', 'two-layer');

/** The two-layer cups with a link that has an end, a wait that nothing opens, and a day. */
export const cups: RunFile = {
  ...file,
  designs: file.designs.map((design) => ({
    ...design,
    links: [...design.links, { from: 'pour-under', to: 'pour-over', atLeastMin: 0, atMostMin: 240 }],
    waits: [...design.waits, { stage: 'turn', part: 'over', closes: 'pliable-until' }],
  })),
  runs: file.runs.map((run) => ({ ...run, readyBy: '2027-01-15' })),
};

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
