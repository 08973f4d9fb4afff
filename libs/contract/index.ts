/** Schemas of everything that crosses a wire or comes from a file. */
export * from './common.js';
export * from './quantity.js';
export * from './workshop.js';
export * from './mould.js';
export * from './fat.js';
export * from './recipe.js';
export * from './part.js';
export * from './material.js';
export * from './piece-design.js';
export * from './run.js';
export * from './run-file.js';
export * from './amounts.js';
export * from './plan-document.js';
export * from './nudge.js';
export * from './problem.js';
export * from './api.js';
export * from './issues.js';
