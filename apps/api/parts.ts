import type { Clock, Log, Nudges } from '#nudges';
import type { EmbeddedPostgres, Storage } from '#storage';
import type { InboxHub } from './inbox/inbox-hub.js';

/** What the controllers work with, made at the start and handed in. */
export interface Parts {
  readonly storage: Storage;
  /** The queue; whether this process or a worker of its own delivers makes no difference here. */
  readonly nudges: Pick<Nudges, 'queue' | 'health'>;
  /** Absent when another PostgreSQL is used than the built-in one. */
  readonly builtIn?: Pick<EmbeddedPostgres, 'dataFolder' | 'state'> | undefined;
  readonly inbox: InboxHub;
  readonly clock: Clock;
  readonly log: Log;
  readonly version: string;
}

/** Injection token of the parts. */
export const PARTS = Symbol('parts');
