import type { DeliveredNudge } from '../nudge-store.js';

/** A nudge written for the workshop, in its language and time zone, as of the moment of sending. */
export interface WrittenNudge extends DeliveredNudge {
  /** To stand above the text: the run's. */
  readonly heading: string;
  readonly text: string;
}

/**
 * A way to reach the maker besides the inbox. A new one is one file in this folder, plus its place in the list
 * the apps pass to `startNudges`.
 *
 * `send` is called at least once, sometimes again: `nudge.id` with `nudge.sequence` tells the
 * repeat from the first. When it throws it is
 * called again later, without touching the inbox or other channels. The hand-over from the claim to this channel
 * goes through the queue: a kill or a queue lost in between leaves the nudge in the inbox but not in the channel.
 */
export interface Channel {
  /** Lower-case letters, digits and hyphens; part of job ids, so it never changes. */
  readonly name: string;
  send(nudge: WrittenNudge): Promise<void>;
}
