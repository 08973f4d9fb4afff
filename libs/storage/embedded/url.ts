import { readFileSync } from 'node:fs';
import { SUPERUSER } from './init.js';

/** The connection string of a database on the built-in server. */
export function urlOf(port: number, passwordFile: string, database: string): string {
  return `postgresql://${SUPERUSER}:${readFileSync(passwordFile, 'utf8').trim()}@127.0.0.1:${port}/${database}`;
}
