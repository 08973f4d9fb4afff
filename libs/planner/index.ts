export * from './problem.js';
export { checkProblem } from './check-problem.js';
export { lengthAt } from './length.js';
export { windows } from './windows.js';
