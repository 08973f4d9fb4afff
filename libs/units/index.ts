/** Quantities with units, instants, issues and evidence, and the little mathematics that all pure libraries share. */
export * from './quantities.js';
export * from './measures.js';
export * from './instants.js';
export * from './issue.js';
export * from './issues/accepted.js';
export type {
  BatterIssues,
  FatIssues,
  MouldIssues,
  RecipeIssues,
  RecipeLimitCode,
} from './issues/chemistry-issues.js';
export type { ClockIssues, CureIssues } from './issues/clock-issues.js';
export type { LogIssues, PhotoIssues, StockIssues } from './issues/log-issues.js';
export type { DesignIssues, PlanIssues, RunIssues } from './issues/run-issues.js';
export type { IssueParams } from './issues/issue-params.js';
export { inputRules, type InputIssues, type InputRule } from './issues/input-issues.js';
export * from './evidence.js';
export * from './random.js';
export * from './normal.js';
export * from './student.js';
export * from './binomial.js';
export * from './shown-text.js';
