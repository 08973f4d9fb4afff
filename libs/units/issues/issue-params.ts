import type { BatterIssues, FatIssues, MouldIssues, RecipeIssues } from './chemistry-issues.js';
import type { ClockIssues, CureIssues } from './clock-issues.js';
import type { InputIssues } from './input-issues.js';
import type { DesignIssues, PlanIssues, RunIssues } from './run-issues.js';
import type { LogIssues, PhotoIssues, StockIssues } from './log-issues.js';

/** Every code of an issue, with what its sentence needs besides the path, the value and what is accepted. */
export interface IssueParams
  extends
    InputIssues,
    RecipeIssues,
    BatterIssues,
    FatIssues,
    MouldIssues,
    ClockIssues,
    CureIssues,
    DesignIssues,
    RunIssues,
    PlanIssues,
    LogIssues,
    PhotoIssues,
    StockIssues {}
