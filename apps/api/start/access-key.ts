import { chmodSync, existsSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Storage } from '#storage';

/** The maker's key and where it is kept. */
export interface AccessKeyFile {
  readonly key: string;
  readonly path: string;
  /** It was made at this start, so that nobody has seen it yet. */
  readonly made: boolean;
}

/**
 * The key in the data folder, readable by its owner only, whoever could read it before. It is made when there is none
 * or when the database does not know it, for example because the folder was moved to another database.
 */
export async function ensureAccessKey(
  storage: Storage,
  workshopId: string,
  home: string,
): Promise<AccessKeyFile> {
  const path = join(home, 'access-key');
  if (existsSync(path)) {
    if ((statSync(path).mode & 0o077) !== 0) chmodSync(path, 0o600);
    const key = readFileSync(path, 'utf8').trim();
    if ((await storage.keys.verify(key)) !== null) return { key, path, made: false };
  }
  const { raw } = await storage.keys.create(workshopId, 'made at the start');
  // A file that is there keeps its mode when written to, and whoever has it open reads on; a new one does neither.
  const draft = `${path}.new`;
  writeFileSync(draft, `${raw}\n`, { mode: 0o600 });
  chmodSync(draft, 0o600);
  renameSync(draft, path);
  return { key: raw, path, made: true };
}
