import { storageTrouble } from '#storage';
import { StartError } from '../program/start-error.js';

/** What PostgreSQL (appendix A "Error Codes") and the system say when a database cannot be used, in words. */
const REASONS: Readonly<Record<string, string>> = {
  ECONNREFUSED: 'nothing listens there',
  ENOTFOUND: 'there is no such host',
  EAI_AGAIN: 'the name of the host cannot be looked up',
  EHOSTUNREACH: 'there is no way to that host',
  ETIMEDOUT: 'it does not answer',
  '28P01': 'it refuses the user or the password',
  '28000': 'it refuses the user',
  '3D000': 'it has no such database',
  '53300': 'it takes no more connections',
};

/**
 * What keeps the program from the database that `DATABASE_URL` names, as a sentence with the way out; never the password
 * that the setting may hold. Anything else stays as it is.
 */
export function explainDatabase(databaseUrl: string, error: unknown): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const reason =
    REASONS[code] ?? (storageTrouble(error) === 'unreachable' ? 'it cannot be reached' : undefined);
  if (reason === undefined) return error;
  const { hostname, port, pathname } = new URL(databaseUrl);
  const place = `${hostname}:${port === '' ? '5432' : port}${pathname}`;
  return new StartError(
    `The database ${place} that DATABASE_URL names cannot be used: ${reason}. ` +
      'Start it, or correct DATABASE_URL; without that setting Benchtide runs a database of its own.',
  );
}
