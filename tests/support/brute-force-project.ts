import type { Project } from './project.js';
import { projectFaults } from './project-faults.js';

/**
 * All schedules that end by `horizon` and whose sink does not wait, by trying every start of every activity; only for
 * a handful of activities, and no lag into the sink.
 */
export function allSchedules(project: Project, horizon: number): number[][] {
  const found: number[][] = [];
  const starts: number[] = [0];
  const place = (i: number): void => {
    if (i === project.dur.length - 1) {
      const schedule = [
        ...starts.slice(0, i),
        Math.max(...starts.slice(0, i).map((at, k) => at + (project.dur[k] ?? 0))),
      ];
      if (projectFaults(project, schedule).length === 0) found.push(schedule);
      return;
    }
    for (let at = 0; at + (project.dur[i] ?? 0) <= horizon; at++) {
      starts[i] = at;
      if (project.lags.every(([a, b, w]) => a > i || b > i || (starts[b] ?? 0) - (starts[a] ?? 0) >= w))
        place(i + 1);
    }
  };
  place(1);
  return found;
}
