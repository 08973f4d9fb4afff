/**
 * Sentences at the edge: messages of the contract in a reader's language, units and time zone. Each language is an entry
 * point of its own (`#words/en`, `#words/de`), so that a page fetches only what it shows.
 */
export { bearerOf, untilOf } from './named.js';
export * from './reader.js';
export * from './words.js';
export * from './phrases.js';
export * from './names.js';
export * from './ingredients.js';
export * from './texts.js';
export * from './with-texts.js';
export * from './format/times.js';
export * from './format/amounts.js';
export * from './format/degrees.js';
