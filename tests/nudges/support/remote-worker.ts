import { fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import type { WaitingNudge } from '#nudges';

export interface WorkerSettings {
  readonly now: string;
  /** What its store has due. */
  readonly nudge: WaitingNudge;
  readonly target: { readonly databaseUrl: string; readonly redisUrl?: string };
  readonly lockMs: number;
}

export interface Claim {
  readonly id: string;
  readonly version: number;
}

export interface RemoteWorker {
  /** The claim with which it now waits for its store, in the middle of the job. */
  readonly claim: Promise<Claim>;
  /** Kills it as a power cut would. */
  kill(): Promise<void>;
}

/** A nudge worker in a process of its own. */
export function startRemoteWorker(settings: WorkerSettings): RemoteWorker {
  const script = fileURLToPath(new URL('./remote-worker.mjs', import.meta.url));
  const child = fork(script, [JSON.stringify(settings)]);
  const gone = once(child, 'exit');
  const claim = new Promise<Claim>((resolve, reject) => {
    child.once('message', (message) => resolve(message as Claim));
    void gone.then(([code]) =>
      reject(new Error(`The worker ended with ${code} before it claimed anything.`)),
    );
  });
  return {
    claim,
    async kill() {
      child.kill('SIGKILL');
      await gone;
    },
  };
}
