import { statfs } from 'node:fs/promises';
import type { Clock } from '#nudges';

/** `unknown`: the database is elsewhere and has not complained. */
export type DiskState = 'ok' | 'full' | 'unknown';

/** Below two segments of its write-ahead log (16 MB each by default) PostgreSQL is about to fail. */
const LEAST_FREE_BYTES = 32 * 1024 * 1024;
/** How long a complaint counts where nothing is stored meanwhile: after that a request either works or complains anew. */
const COMPLAINT_MS = 60_000;

/** Watches the disk under the database. */
export class DiskWatch {
  private complainedAt = -Infinity;

  /** @param dataFolder of the built-in database; undefined when another one is used */
  constructor(
    readonly dataFolder: string | undefined,
    private readonly clock: Clock,
  ) {}

  /** The database said that the disk is full. */
  complain(): void {
    this.complainedAt = this.clock.now().getTime();
  }

  /** Something was stored, so there is space again. */
  stored(): void {
    this.complainedAt = -Infinity;
  }

  async state(): Promise<DiskState> {
    if (Math.abs(this.clock.now().getTime() - this.complainedAt) < COMPLAINT_MS) return 'full';
    if (this.dataFolder === undefined) return 'unknown';
    try {
      const { bavail, bsize } = await statfs(this.dataFolder);
      return bavail * bsize < LEAST_FREE_BYTES ? 'full' : 'ok';
    } catch {
      return 'unknown';
    }
  }
}
