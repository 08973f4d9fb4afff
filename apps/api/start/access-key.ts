import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Storage } from '#storage';

/** The maker's key and where it is kept. */
export interface AccessKeyFile {
  readonly key: string;
  readonly path: string;
}

/**
 * The key in the data folder, readable by its owner only. It is made when there is none or when the database does not
 * know it, for example because the folder was moved to another database.
 */
export async function ensureAccessKey(
  storage: Storage,
  workshopId: string,
  home: string,
): Promise<AccessKeyFile> {
  const path = join(home, 'access-key');
  if (existsSync(path)) {
    const key = readFileSync(path, 'utf8').trim();
    if ((await storage.keys.verify(key)) !== null) return { key, path };
  }
  const { raw } = await storage.keys.create(workshopId, 'made at the start');
  mkdirSync(home, { recursive: true });
  writeFileSync(path, `${raw}\n`, { mode: 0o600 });
  return { key: raw, path };
}
