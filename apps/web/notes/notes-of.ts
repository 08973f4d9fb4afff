import type { LogEntry } from '#contract';
import type { QueuedEntry } from '../offline/queue-order.js';
import type { PhotoToSend } from './shrink-photo.js';

export type NoteEntry = Extract<LogEntry, { kind: 'note' }>;

/** A note that stands. */
export interface Note {
  /** Of its entry in the log; of one that waits, what it is sent under. */
  readonly id: string;
  readonly entry: NoteEntry;
  /** It waits on this device to be sent. */
  readonly waits: boolean;
  /** Photos that are not sent yet. */
  readonly photos: readonly PhotoToSend[];
}

/**
 * The notes of a run that stand, in the order in which they were written: without those taken back, and each as it was corrected
 * last, in its first place.
 * @param log as the API has it, oldest first
 * @param queue what waits on this device, of all runs
 */
export function notesOf(
  runId: string,
  log: readonly { readonly id: string; readonly entry: LogEntry }[],
  queue: readonly QueuedEntry[],
): Note[] {
  const notes: Note[] = [];
  const add = (note: Note): void => {
    const { corrects } = note.entry;
    const corrected = notes.findIndex(({ id }) => id === corrects);
    if (corrected < 0) notes.push(note);
    else notes[corrected] = note;
  };
  const read = (id: string, entry: LogEntry, waits: boolean, photos: readonly PhotoToSend[]): void => {
    if (entry.kind === 'note') add({ id, entry, waits, photos });
    if (entry.kind !== 'take-back') return;
    const taken = notes.findIndex((note) => note.id === entry.entry);
    if (taken >= 0) notes.splice(taken, 1);
  };
  for (const { id, entry } of log) read(id, entry, false, []);
  for (const { id, runId: of, entry, refusal, photos = [] } of queue) {
    if (of === runId && refusal === undefined) read(id, entry, true, photos);
  }
  return notes;
}
