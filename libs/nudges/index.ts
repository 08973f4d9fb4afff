/** Delivers stored nudges when they are due. The queue is only the alarm clock: losing it loses no nudge. */
export { startNudges, type Nudges, type NudgesOptions } from './start-nudges.js';
export { openNudgeQueue, type QueueAlone } from './open-nudge-queue.js';
export type { NudgeQueue, QueueHealth } from './queue.js';
export type { SweepCount } from './sweep.js';
export type { DeliveredNudge, NudgeStore, WaitingNudge } from './nudge-store.js';
export { describeNudge } from './describe-nudge.js';
export type { Channel } from './channels/channel.js';
export { logChannel } from './channels/log.js';
export { systemClock, type Clock } from './clock.js';
export type { Log } from './log.js';
