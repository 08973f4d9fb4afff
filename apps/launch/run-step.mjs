import { spawn } from 'node:child_process';
import { LaunchError } from './launch-error.mjs';
import { projectFolder } from './paths.mjs';

const STILL_THERE_EVERY_MS = 10_000;
/** Signals that end a terminal program, with the status a shell gives for them. */
const signals = /** @type {const} */ ({ SIGINT: 130, SIGTERM: 143, SIGHUP: 129 });

/**
 * Runs one command in the project folder, quietly: its output is shown only when it fails. A signal to us ends
 * the command too, so that nothing goes on building behind a terminal that was closed.
 * @param {(line: string) => void} log
 * @param {{ title: string, still: string, command: string, args: readonly string[], failure: string,
 *   shell?: boolean }} step
 * @throws {LaunchError} when the command cannot be started or fails
 */
export async function runStep(log, { title, still, command, args, failure, shell = false }) {
  const started = performance.now();
  const child = spawn(command, args, { cwd: projectFolder, shell, stdio: ['ignore', 'pipe', 'pipe'] });
  /** @type {Buffer[]} */
  const said = [];
  child.stdout.on('data', (chunk) => said.push(chunk));
  child.stderr.on('data', (chunk) => said.push(chunk));
  const sign = setInterval(
    () => log(`… ${still} (${Math.round((performance.now() - started) / 1000)} s)`),
    STILL_THERE_EVERY_MS,
  );
  const stopPassing = passSignals(child);
  log(title);
  try {
    const code = await ended(child);
    if (code === 0) return;
    log(Buffer.concat(said).toString().trimEnd());
    throw new LaunchError(failure);
  } catch (error) {
    if (error instanceof LaunchError) throw error;
    throw new LaunchError(`${failure} (${command}: ${String(error)})`);
  } finally {
    clearInterval(sign);
    stopPassing();
  }
}

/**
 * @param {import('node:child_process').ChildProcess} child
 * @returns {Promise<number | null>} its exit status; null when a signal ended it
 */
function ended(child) {
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', resolve);
  });
}

/** @param {import('node:child_process').ChildProcess} child */
function passSignals(child) {
  const handlers = Object.entries(signals).map(([name, status]) => {
    const handler = () => {
      child.kill(/** @type {NodeJS.Signals} */ (name));
      child.once('close', () => process.exit(status));
    };
    process.on(name, handler);
    return { name, handler };
  });
  return () => handlers.forEach(({ name, handler }) => process.off(name, handler));
}
