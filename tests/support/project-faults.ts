import type { Project } from './project.js';

/**
 * What is wrong with the starts of a project, in words; empty when nothing is. Written from the definition of the
 * format, moment by moment, and shares no code with the search.
 */
export function projectFaults({ dur, cap, req, lags }: Project, starts: ArrayLike<number>): string[] {
  const start = (i: number): number => starts[i] ?? NaN;
  const end = (i: number): number => start(i) + (dur[i] ?? NaN);
  const activities = [...dur.keys()];
  const makespan = start(dur.length - 1);
  const faults = activities.filter((i) => !Number.isInteger(start(i)) || start(i) < 0).map(unplaced);
  if (start(0) !== 0) faults.push(`the source starts at ${start(0)}`);
  for (const i of activities) if (!(end(i) <= makespan)) faults.push(`${i} ends after the sink`);
  for (const [i, j, w] of lags) {
    if (!(start(j) - start(i) >= w)) faults.push(`${j} is ${start(j) - start(i)} after ${i}, not ${w}`);
  }
  for (let t = 0; t < makespan; t++) {
    const running = activities.filter((i) => start(i) <= t && t < end(i));
    cap.forEach((capacity, r) => {
      const used = running.reduce((sum, i) => sum + (req[i]?.[r] ?? NaN), 0);
      if (!(used <= capacity)) faults.push(`${used} of ${capacity} of resource ${r} at ${t}`);
    });
  }
  return faults;
}

function unplaced(i: number): string {
  return `${i} has no start`;
}
