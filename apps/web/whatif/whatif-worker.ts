import { answerWish } from './answer-wish.js';
import type { Base, FromWorker, ToWorker } from './messages.js';

/** What of a worker's own is used here. */
interface Scope {
  postMessage(message: FromWorker): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<ToWorker>) => void): void;
}

const scope = globalThis as unknown as Scope;
let known: { readonly name: number; readonly base: Base } | undefined;

scope.addEventListener('message', ({ data }) => {
  if (data.kind === 'base') {
    known = data;
    return;
  }
  const began = performance.now();
  try {
    if (known?.name !== data.base) throw new Error(`base ${String(data.base)} was not sent`);
    const outcome = answerWish(known.base, data.wish, data.nowMin, data.scenarios);
    scope.postMessage({ kind: 'answer', outcome, tookMs: performance.now() - began });
  } catch (error) {
    scope.postMessage({ kind: 'broken', message: error instanceof Error ? error.message : String(error) });
  }
});
