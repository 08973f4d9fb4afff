import { mkdirSync, readFileSync, statSync, unlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { inProject } from './paths.mjs';

const lockPath = inProject('dist', '.lock');
const SIGN_OF_LIFE_MS = 2_000;
/** Several missed signs of life; process ids say nothing across containers that share the folder. */
const GIVEN_UP_MS = 15_000;
const LOOK_AGAIN_MS = 200;

/**
 * Runs `work` while nobody else installs or builds in this folder. A holder that died is noticed because it
 * stops touching its lock.
 * @param {(line: string) => void} log
 * @param {() => Promise<void>} work
 */
export async function withLock(log, work) {
  mkdirSync(inProject('dist'), { recursive: true });
  let told = false;
  while (!take()) {
    if (!told) log('Another start is installing or building here; waiting for it …');
    told = true;
    dropIfAbandoned();
    await sleep(LOOK_AGAIN_MS);
  }
  const sign = setInterval(() => utimesSync(lockPath, new Date(), new Date()), SIGN_OF_LIFE_MS);
  process.once('exit', release);
  try {
    await work();
  } finally {
    clearInterval(sign);
    process.off('exit', release);
    release();
  }
}

function take() {
  try {
    writeFileSync(lockPath, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

function release() {
  ignoringMissing(() => unlinkSync(lockPath));
}

/** Reading twice keeps the gap small in which a lock taken by a third process could be dropped in error. */
function dropIfAbandoned() {
  ignoringMissing(() => {
    const holder = readFileSync(lockPath, 'utf8');
    const age = Date.now() - statSync(lockPath).mtimeMs;
    if (age > GIVEN_UP_MS && readFileSync(lockPath, 'utf8') === holder) unlinkSync(lockPath);
  });
}

/** @param {() => void} action */
function ignoringMissing(action) {
  try {
    action();
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
  }
}

/** @param {unknown} error */
function codeOf(error) {
  return error instanceof Error && 'code' in error ? error.code : undefined;
}
