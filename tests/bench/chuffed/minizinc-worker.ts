import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { compileFunction } from 'node:vm';
import { parentPort } from 'node:worker_threads';

/** First the places of the program, then, once it has said `ready`, what to run. */
export type Request =
  | { readonly wasmURL: string; readonly dataURL: string }
  | {
      readonly jsonStream: true;
      readonly files: Readonly<Record<string, string>>;
      readonly args: readonly string[];
    };

/** Those of its answers that are listened to here. */
export type Answer =
  | { readonly type: 'ready' }
  | { readonly type: 'solution'; readonly output: { readonly json: { readonly start: number[] } } }
  | { readonly type: 'statistics'; readonly statistics: Readonly<Record<string, unknown>> }
  | { readonly type: 'status'; readonly status: string }
  | { readonly type: 'error'; readonly what: string; readonly message: string }
  | { readonly type: 'exit'; readonly code: number };

// The package's WebAssembly comes in a script for a browser's worker, and its entry for Node starts a native program
// instead. Of a worker the script needs no more than to hear and to answer; the rest of it knows Node.
const require = createRequire(import.meta.url);
const path = require.resolve('minizinc/minizinc-worker.js');
const hear = (kind: string, listener: (event: { data: unknown }) => unknown): void => {
  parentPort?.on(kind, (data) => void listener({ data }));
};
const answer = (message: unknown): void => parentPort?.postMessage(message);
const script = compileFunction(
  readFileSync(path, 'utf8'),
  ['require', '__dirname', '__filename', 'addEventListener', 'postMessage'],
  { filename: path },
) as (...globals: unknown[]) => void;
script(require, dirname(path), path, hear, answer);
