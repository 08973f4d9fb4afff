import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

/** Another process that owns a built-in database. */
export interface Owner {
  readonly pid: number;
  readonly databaseUrl: string;
  readonly adopted: boolean;
  readonly dataFolder: string;
  /** Ends the process without a word, and waits until it is gone. */
  kill(): Promise<void>;
  /** Lets it stop its database in good order. */
  stop(): Promise<void>;
}

/** Why an owner did not start. */
export interface OwnerFailure {
  readonly error: { readonly name: string; readonly message: string };
}

export interface OwnerOptions {
  readonly home: string;
  /** Ordinary user to run as; the test must be root. */
  readonly uid?: number;
  /** Without setpriv on its path the server outlives its owner, as it does where there is no such program. */
  readonly withoutSetpriv?: boolean;
}

export async function startOwner(options: OwnerOptions): Promise<Owner | OwnerFailure> {
  const { home, uid, withoutSetpriv } = options;
  const script = join(import.meta.dirname, 'embedded-owner.mjs');
  const child = spawn(process.execPath, [script, home], {
    ...(uid !== undefined && { uid, gid: uid }),
    cwd: '/',
    env: withoutSetpriv ? { PATH: '/nonexistent' } : { PATH: process.env['PATH'] },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit');
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    child.kill(signal);
    await ended;
  };
  for await (const line of createInterface({ input: child.stdout })) {
    const said = JSON.parse(line) as OwnerFailure | Omit<Owner, 'pid' | 'kill' | 'stop'>;
    if ('error' in said) {
      await ended;
      return said;
    }
    return { ...said, pid: child.pid ?? 0, kill: () => end('SIGKILL'), stop: () => end('SIGTERM') };
  }
  throw new Error('The owner ended without a word.');
}

/** The same, for when it must start. */
export async function startedOwner(options: OwnerOptions): Promise<Owner> {
  const owner = await startOwner(options);
  if ('error' in owner) throw new Error(`${owner.error.name}: ${owner.error.message}`);
  return owner;
}
