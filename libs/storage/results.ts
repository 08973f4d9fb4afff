/** Answer to a change that named the version it was based on. */
export type Changed<T> =
  | { readonly ok: true; readonly value: T }
  /** Someone else was first; `current` is what is stored now. */
  | { readonly ok: false; readonly reason: 'stale'; readonly current: T };

/** Answer to the making of something that has a key of its own. */
export type Created<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly reason: 'key-taken' };

/** The workshop's lock was not free in time: another change is still at work. Trying again is safe. */
export class WorkshopBusyError extends Error {
  constructor(readonly workshopId: string) {
    super('Another change to this workshop is still being worked on. Try again in a moment.');
    this.name = 'WorkshopBusyError';
  }
}

/** @returns the row that was changed, the current one as stale, or null when there is none */
export function changedOr<T>(changed: T | undefined, current: T | null): Changed<T> | null {
  if (changed !== undefined) return { ok: true, value: changed };
  return current === null ? null : { ok: false, reason: 'stale', current };
}
