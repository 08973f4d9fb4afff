/** Quantities with units, instants, issues and evidence, and the little mathematics that all pure libraries share. */
export * from './quantities.js';
export * from './measures.js';
export * from './instants.js';
export * from './issue.js';
export * from './evidence.js';
export * from './random.js';
export * from './normal.js';
export * from './student.js';
export * from './binomial.js';
export * from './shown-text.js';
