/** Another living process uses the same folder. */
export class HomeInUseError extends Error {
  constructor(
    readonly home: string,
    readonly pid: number,
  ) {
    super(
      `The folder ${home} is in use by another copy of Benchtide (process ${pid}). ` +
        'Stop that one first, or give this one a folder of its own with BENCHTIDE_HOME.',
    );
    this.name = 'HomeInUseError';
  }
}

/** There is no built-in database for this machine. */
export class UnsupportedPlatformError extends Error {
  constructor(platform: string, detail: string) {
    super(
      `The built-in PostgreSQL cannot be used here (${platform}): ${detail} ` +
        'Set DATABASE_URL to a PostgreSQL server of your own instead.',
    );
    this.name = 'UnsupportedPlatformError';
  }
}

/** The built-in database is there but did not start; the message says why and where its log is. */
export class DatabaseStartError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'DatabaseStartError';
  }
}

/** What to do first when the output of PostgreSQL tells of a full disk; else nothing. */
export function fullDisk({ dataFolder }: { readonly dataFolder: string }, output: string): string {
  if (!/No space left on device|Disk quota exceeded/.test(output)) return '';
  return (
    `The disk that holds ${dataFolder} is full: free some space there, ` +
    'or move the folder to another disk and say so with BENCHTIDE_HOME.\n'
  );
}
