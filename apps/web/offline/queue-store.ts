import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { inOrder, type QueuedEntry } from './queue-order.js';

interface QueueDatabase extends DBSchema {
  'log-queue': { readonly key: number; readonly value: QueuedEntry };
}

const STORE = 'log-queue';
let opened: Promise<IDBPDatabase<QueueDatabase>> | undefined;

function database(): Promise<IDBPDatabase<QueueDatabase>> {
  opened ??= openDB<QueueDatabase>('benchtide', 2, {
    async upgrade(db, before, _now, transaction) {
      if (before === 0) db.createObjectStore(STORE, { keyPath: 'place', autoIncrement: true });
      // Refusals were kept as sentences: those entries are sent once more, and refused in data.
      if (before !== 1) return;
      const store = transaction.objectStore(STORE);
      for (const { refusal: _, ...queued } of await store.getAll()) await store.put(queued);
    },
  });
  return opened;
}

/** Keeps an entry through reloads. The store gives it its place. @throws where this browser keeps nothing */
export async function keep(queued: Omit<QueuedEntry, 'place'>): Promise<void> {
  // The place is left out here and added by the store, which its types do not know.
  await (await database()).add(STORE, queued as QueuedEntry);
}

export async function replace(queued: QueuedEntry): Promise<void> {
  await (await database()).put(STORE, queued);
}

export async function drop({ place }: QueuedEntry): Promise<void> {
  await (await database()).delete(STORE, place);
}

/** All that is kept, as it was logged. */
export async function kept(): Promise<QueuedEntry[]> {
  return inOrder(await (await database()).getAll(STORE));
}
