import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { runFuzz, type FuzzFindings } from '../fuzz/run-fuzz.js';
import { atMost, watched, type Figure } from '../support/figure.js';
import { freePort } from '../support/free-port.js';
import { newHome, removeHome, startProgram } from '../support/program.js';
import { loadRunFile } from '../support/run-files.js';

const REQUESTS = 20_000;
const ASK_HEALTH_EVERY_MS = 50;

/**
 * Sends 20,000 requests, sound and wrong, over every route to the program as it is shipped, with a database of its own, and
 * tells how it took them. Arguments: how many, and the seed.
 */
export async function figures([requests = String(REQUESTS), seed = '1']: readonly string[] = []): Promise<
  Figure[]
> {
  const home = newHome();
  const program = await startProgram(home, await freePort());
  try {
    const { url, child } = program;
    const key = readFileSync(join(home, 'access-key'), 'utf8').trim();
    const before = residentMB(child.pid);
    const health = askHealth(url);
    let sent = 0;
    let ended = false;
    // Ends it early, and what was found by then is told. Ctrl-C would end the program that is asked, too.
    process.once('SIGUSR2', () => (ended = true));
    const { faults, answers, slowest } = await runFuzz({
      ...{ url, key, requests: Number(requests), seed: Number(seed) },
      ...{ file: loadRunFile('ok', 'two-layer'), now: new Date(Date.now() - 60_000).toISOString() },
      onRequest: (count) => {
        if (count % 1000 === 0)
          process.stderr.write(`${String(count)} sent, ${String(residentMB(child.pid))} MB\n`);
        sent = count + 1;
        return !ended;
      },
    });
    const waits = await health.end();
    tell(answers, faults);
    return [
      watched('requests sent', sent, '', 'higher'),
      atMost('answers that should not have been', faults.length, '', 0),
      watched('slowest answer', slowest.ms, `ms, ${slowest.name}`, 'lower'),
      atMost('health meanwhile, 99 of 100 within', percentile(waits, 0.99), 'ms', 100),
      watched('health meanwhile, longest', percentile(waits, 1), 'ms', 'lower'),
      watched('memory before', before, 'MB', 'lower'),
      watched('memory after', residentMB(child.pid), 'MB', 'lower'),
    ];
  } finally {
    program.child.kill('SIGTERM');
    await program.ended;
    removeHome(home);
  }
}

/** Answers by route and status, and what was wrong. */
function tell(answers: FuzzFindings['answers'], faults: readonly string[]): void {
  for (const [name, byStatus] of [...answers].toSorted(([a], [b]) => a.localeCompare(b))) {
    const counts = [...byStatus]
      .toSorted(([a], [b]) => a - b)
      .map(([status, n]) => `${String(status)} × ${String(n)}`);
    process.stdout.write(`${name.padEnd(40)} ${counts.join(', ')}\n`);
  }
  for (const fault of faults) process.stdout.write(`WRONG ${fault}\n`);
}

/** Asks for health all the while. */
function askHealth(url: string): { end(): Promise<number[]> } {
  const waits: number[] = [];
  let asking = true;
  const asked = (async () => {
    while (asking) {
      const begun = performance.now();
      await (await fetch(`${url}/api/health`)).text();
      waits.push(performance.now() - begun);
      await pause(ASK_HEALTH_EVERY_MS);
    }
  })();
  return {
    async end() {
      asking = false;
      await asked;
      return waits;
    },
  };
}

function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

/** Memory that a process has in use, as the kernel of Linux tells it; NaN elsewhere. */
function residentMB(pid: number | undefined): number {
  try {
    const status = readFileSync(`/proc/${String(pid)}/status`, 'utf8');
    return Math.round(Number(/^VmRSS:\s+(\d+) kB$/m.exec(status)?.[1]) / 1024);
  } catch {
    return NaN;
  }
}
