import type { AmountsMessage } from './amounts.js';
import type { Caution } from './caution.js';
import type { ClockMessage } from './clock.js';
import type { ConflictReason, ConflictTiming, Loss, Relaxation } from './conflict.js';
import type { HeatNote } from './heat.js';
import type { StartReason } from './latest-start.js';
import type { Logged, PlanCause, PlanEffect } from './logged.js';
import type { NudgeMessage } from './nudge.js';
import type { RemedyMessage } from './remedy.js';
import type { Risk } from './risk.js';
import type { Why } from './why.js';

export * from './amounts.js';
export * from './caution.js';
export * from './clock.js';
export * from './conflict.js';
export * from './heat.js';
export * from './latest-start.js';
export * from './logged.js';
export * from './nudge.js';
export * from './remedy.js';
export * from './risk.js';
export * from './why.js';

/** Everything that readers are told as data. A new family of messages joins here, and the languages follow. */
export type Message =
  | AmountsMessage
  | Caution
  | ClockMessage
  | ConflictReason
  | ConflictTiming
  | HeatNote
  | Logged
  | Loss
  | NudgeMessage
  | PlanCause
  | PlanEffect
  | Relaxation
  | RemedyMessage
  | Risk
  | StartReason
  | Why;
