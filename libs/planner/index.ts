export * from './problem.js';
export { checkProblem } from './check-problem.js';
export { lengthAt } from './length.js';
export { schedule } from './schedule.js';
export { sittings, type Sitting } from './sittings.js';
export { windows } from './windows.js';
