import type { Caution } from './caution.js';
import type { NudgeMessage } from './nudge.js';

export * from './caution.js';
export * from './nudge.js';

/** Everything that readers are told as data. A new family of messages joins here, and the languages follow. */
export type Message = Caution | NudgeMessage;
