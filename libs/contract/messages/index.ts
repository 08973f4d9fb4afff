import type { Caution } from './caution.js';

export * from './caution.js';

/** Everything that readers are told as data. A new family of messages joins here, and the languages follow. */
export type Message = Caution;
