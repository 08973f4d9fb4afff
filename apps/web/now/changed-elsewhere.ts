import type { QueryClient } from '@tanstack/react-query';
import type { Schemas } from '../api/client.js';

/** What was written somewhere, as the stream tells it. */
export interface Change {
  /** Id of a run, or `stock`. */
  readonly changed: string;
  /** Number of the plan that the run has now. */
  readonly plan?: number;
  /** Id of the entry that its log has now. */
  readonly entry?: string;
}

/** An entry of this device is told here as its answer arrives, which brings the plan along. */
const WAIT_MS = 200;

const OF_RUN = ['run', 'plan', 'plans', 'tide', 'odds', 'amounts', 'clocks', 'cure'];
const OF_ALL = ['runs', 'lots', 'nudges', 'lessons', 'stock'];

/**
 * Brings pages up to date with what was written on another device. What this page knows already is not asked for again.
 * @returns a function that is told each change; null: it may have been anything
 */
export function renewChanged(queries: QueryClient): (change: Change | null) => void {
  let waiting: (Change | null)[] = [];
  const renew = (): void => {
    const keys = new Map<string, readonly string[]>();
    for (const change of waiting) for (const key of keysOf(queries, change)) keys.set(key.join(' '), key);
    waiting = [];
    for (const queryKey of keys.values()) void queries.invalidateQueries({ queryKey });
  };
  return (change) => {
    if (waiting.length === 0) setTimeout(renew, WAIT_MS);
    waiting.push(change);
  };
}

/** Keys of the queries that a change makes old. */
export function keysOf(queries: Pick<QueryClient, 'getQueryData'>, change: Change | null): string[][] {
  if (change === null) return [...OF_RUN, ...OF_ALL, 'log'].map((name) => [name]);
  const { changed, plan, entry } = change;
  if (changed === 'stock') return [['stock']];
  if (plan !== undefined) {
    const known = queries.getQueryData<Schemas['PlanRevision']>(['plan', changed]);
    if (known !== undefined && known.number >= plan) return [];
    return [...OF_RUN.map((name) => [name, changed]), ...OF_ALL.map((name) => [name])];
  }
  if (entry !== undefined) {
    const known = queries.getQueryData<readonly Schemas['LoggedEntry'][]>(['log', changed]);
    return known?.some(({ id }) => id === entry) === true
      ? []
      : [
          ['log', changed],
          ['cure', changed],
        ];
  }
  return [['run', changed], ['runs'], ['lots']];
}
