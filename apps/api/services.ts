import type { Clock, Log, Nudges } from '#nudges';
import type { EmbeddedPostgres, Storage } from '#storage';
import type { Compute } from './compute/compute.js';
import type { InboxHub } from './inbox/inbox-hub.js';
import type { OddsRenewal } from './use-cases/renew-odds.js';
import type { StockUse } from './use-cases/stock-use.js';
import type { Taught } from './use-cases/taught.js';
import type { WorkshopTurns } from './use-cases/workshop-turns.js';

/** What the controllers work with, made at the start and handed in. */
export interface Services {
  readonly storage: Storage;
  /** What takes time is computed there, beside the event loop. */
  readonly compute: Compute;
  /** What the runs of a workshop teach. */
  readonly taught: Taught;
  /** What the runs of a workshop have used up. */
  readonly stockUse: StockUse;
  /** Judges plans anew that rest on what was changed. */
  readonly renewal: OddsRenewal;
  /** Changes of one workshop come one after the other. */
  readonly turns: WorkshopTurns;
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
export const SERVICES = Symbol('parts');
