/** Names that schemas are made from, without the schemas: what a page needs for its choices, and nothing to fetch with it. */
export * from './clock-inputs.js';
export * from './design-names.js';
export * from './mishaps.js';
export * from './mould-of.js';
export * from './recipe-names.js';
export * from './soap-states.js';
export * from './usual-kept.js';
