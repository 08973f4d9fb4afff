import type { AmountsMessage } from './amounts.js';
import type { Caution } from './caution.js';
import type { ClockMessage } from './clock.js';
import type { NudgeMessage } from './nudge.js';
import type { RemedyMessage } from './remedy.js';
import type { Risk } from './risk.js';

export * from './amounts.js';
export * from './caution.js';
export * from './clock.js';
export * from './nudge.js';
export * from './remedy.js';
export * from './risk.js';

/** Everything that readers are told as data. A new family of messages joins here, and the languages follow. */
export type Message = AmountsMessage | Caution | ClockMessage | NudgeMessage | RemedyMessage | Risk;
