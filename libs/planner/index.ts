/** Windows, schedules and odds for stages with time lags of either kind, resources and hours. Knows nothing of soap. */
export * from './problem.js';
export { controllability, type Controllability } from './controllability/controllability.js';
export type { Contingent, Side, Stnu } from './controllability/stnu.js';
export { checkProblem } from './check-problem.js';
export {
  latestStart,
  type Beginning,
  type LatestStart,
  type LatestStartOptions,
} from './backward/latest-start.js';
export { guarantee, type Guarantee } from './guarantee/guarantee.js';
export { timingConflictOf, type TimingConflict } from './conflict-relaxation/timing-conflict.js';
export { relaxations, type Relaxation } from './conflict-relaxation/relaxations.js';
export { lengthAt } from './length.js';
export { metScenarios, odds } from './odds.js';
export { pinned } from './pinned.js';
export { plan, type PlanOptions } from './plan.js';
export { withoutDueDates, withoutPreferences } from './preferences.js';
export { schedule, ScheduleSearch } from './schedule.js';
export { standingSchedule } from './standing.js';
export { sittings, type Sitting } from './sittings.js';
export { windows, windowsAlong } from './windows.js';
