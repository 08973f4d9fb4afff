/** One run from recipe to tide table: what the API, the worker, the command line and the web app all call. */
export { planRuns } from './plan-run.js';
export { writeClocks } from './write-clocks.js';
export { workshopLessons } from './workshop-lessons.js';
export { gatherForRuns, writeBatchSheet } from './write-batch-sheet.js';
export { checkInput, checkWorkshop } from './check-input.js';
export { cavityMl, checkMould } from './cavity-of-mould.js';
export { checkDesign, type DesignSurroundings } from './check-design.js';
export { comparePlans } from './compare-plans.js';
export { chooseNudges, type ChosenNudge } from './choose-nudges.js';
export { busyOf } from './busy-of.js';
export { unknownName } from './name-issues.js';
export { tellChanges } from './tell-changes.js';
export { checkEntry } from './check-entry.js';
export { keepOpenStages } from './keep-open-stages.js';
export { durationText } from './duration-text.js';
export type { Busy, PastRun, PlanOptions, RunsInput } from './input.js';
export type { LogLine } from './standing-log.js';
