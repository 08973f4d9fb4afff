/** Windows, schedules and odds for stages with time lags of either kind, resources and hours. Knows nothing of soap. */
export * from './problem.js';
export { controllability, type Controllability } from './controllability/controllability.js';
export type { Contingent, Side, Stnu } from './controllability/stnu.js';
export { checkProblem } from './check-problem.js';
export { lengthAt } from './length.js';
export { odds } from './odds.js';
export { plan } from './plan.js';
export { schedule } from './schedule.js';
export { sittings, type Sitting } from './sittings.js';
export { windows } from './windows.js';
