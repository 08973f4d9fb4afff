import { useSyncExternalStore } from 'react';
import type { Issue } from '#units';
import { answered, api, ApiError, type Schemas } from '../api/client.js';
import { issuesOf } from '../form/path-of.js';
import { oneTabAtATime } from '../offline/one-tab.js';
import { verdict, type Refusal } from '../offline/queue-order.js';
import { forShown } from '../preferences/shown-workshop.js';

export type StockEntry = Schemas['StockEntryInput'];

/** A line of the stock ledger that was entered while Benchtide was out of reach. */
export interface WaitingLine {
  /** However often it is sent, it is written once. */
  readonly id: string;
  readonly entry: StockEntry;
  /** Present once the API has refused it; it then waits for a decision. */
  readonly refusal?: Refusal;
}

const KEY = forShown('benchtide.stock-waiting');
/** More than anyone buys before coming home; each is some 200 bytes. */
const MOST = 500;

const listeners = new Set<() => void>();
const settledListeners = new Set<() => void>();
let known = read();

addEventListener('storage', ({ key }) => {
  if (key === KEY) changed();
});

/** What waits on this device, in the order in which it was entered. */
export function useWaitingLines(): readonly WaitingLine[] {
  return useSyncExternalStore(whenChanged, () => known);
}

/**
 * Keeps a line until Benchtide can be reached.
 * @throws DOMException where this browser keeps nothing; RangeError where too many wait
 */
export function keepLine(line: WaitingLine): void {
  const lines = read().filter(({ id }) => id !== line.id);
  if (lines.length >= MOST) throw new RangeError('too many lines wait');
  write([...lines, line]);
}

/** Takes a line out of those that wait. It may have been written by then. */
export function dropLine(id: string): void {
  write(read().filter((line) => line.id !== id));
}

/** Tells when lines that waited have been written, or refused for what others wrote. @returns a function that ends it */
export function whenLinesSettled(listener: () => void): () => void {
  settledListeners.add(listener);
  return () => settledListeners.delete(listener);
}

/** Writes one line into the ledger; the same id again is the same line. @throws ApiError; TypeError where nothing answers */
export async function writeLine({ id, entry }: Omit<WaitingLine, 'refusal'>): Promise<unknown> {
  return answered(api.POST('/api/stock/entries', { body: { id, entry } }));
}

/** Writes what waits, in order, until nothing is left or the API is out of reach. A refused line stays, with the reason. */
export async function writeWaitingLines(): Promise<void> {
  await oneTabAtATime(KEY, async () => {
    let isSettled = false;
    for (const line of read()) {
      if (line.refusal !== undefined) continue;
      try {
        await writeLine(line);
        dropLine(line.id);
      } catch (error) {
        if (!isRefusal(error)) break;
        const { status, message: text } = error;
        const issues: readonly Issue[] = issuesOf(error.problem, ['entry']);
        write(
          read().map((each) => (each.id === line.id ? { ...each, refusal: { status, text, issues } } : each)),
        );
      }
      isSettled = true;
    }
    if (isSettled) settledListeners.forEach((listener) => listener());
  });
}

/** Whether the API says of the line itself that it cannot be; anything else may pass. */
function isRefusal(error: unknown): error is ApiError {
  return error instanceof ApiError && verdict(error.status) === 'refused';
}

function read(): readonly WaitingLine[] {
  try {
    const lines: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(lines) ? (lines as WaitingLine[]) : [];
  } catch {
    return [];
  }
}

function write(lines: readonly WaitingLine[]): void {
  if (lines.length === 0) localStorage.removeItem(KEY);
  else localStorage.setItem(KEY, JSON.stringify(lines));
  changed();
}

function changed(): void {
  known = read();
  listeners.forEach((listener) => listener());
}

function whenChanged(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
