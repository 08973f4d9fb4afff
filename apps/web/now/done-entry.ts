import type { LoggedView } from '#contract';

/**
 * The entry by which a stage counts as done: the last that was not taken back.
 * @param log of the run, in the order in which it was logged
 */
export function doneEntry(log: readonly LoggedView[], stage: string): LoggedView | undefined {
  const takenBack = new Set<string>();
  // A taking-back may itself be taken back, by a later entry: so from the end.
  for (const { id, entry } of [...log].reverse()) {
    if (takenBack.has(id)) continue;
    if (entry.kind === 'take-back') takenBack.add(entry.entry);
    if (entry.kind === 'done' && entry.stage === stage) return log.find((each) => each.id === id);
  }
  return undefined;
}
