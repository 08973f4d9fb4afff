import type { Random } from '#units';
import type { Operation } from './api-description.js';

type Json = Readonly<Record<string, unknown>>;

const SHELVES = ['moulds', 'fats', 'recipes', 'designs'] as const;

/**
 * What a workshop must hold after the answers that it gave: what was said to be stored is there, what was refused is not,
 * and nothing else. It knows only what a client can see.
 */
export class Workshop {
  /** Things that can be replaced, as they were answered last; the workshop itself under its own name. */
  private readonly things = new Map<string, Json>();
  /** What was there before the first request, and is not looked at. */
  readonly before = new Set<string>();
  /** Ids by the list they stand in. */
  readonly shelves = new Map<string, Set<string>>(SHELVES.map((name) => [name, new Set()]));
  readonly runs = new Set<string>();
  private readonly runKeys = new Map<string, string>();
  private readonly names = new Set<string>();
  /** Ids of what was logged, by run. */
  readonly logged = new Map<string, Set<string>>();
  /** Entries that changes wrote into a log, by run; they are not answered. */
  readonly loggedByChanges = new Map<string, number>();
  splits = 0;
  private made = 0;

  constructor(readonly key: string) {}

  /** Ids that fit into a path. */
  idsUnder(path: string): string[] {
    const [, , list = ''] = path.split('/');
    return [...(this.shelves.get(list) ?? (list === 'runs' ? this.runs : []))];
  }

  /** The version to name when a thing is taken out of use. */
  versionOf(id = ''): number {
    return Number(this.things.get(id)?.['version'] ?? 1);
  }

  keys(): string[] {
    return [...this.names];
  }

  /** An example made to fit what is there: a key of its own where something is made, that of the run where one is meant. */
  fitted(example: unknown, { name }: Operation, id: string | undefined, random: Random): unknown {
    const copy = structuredClone(example) as Record<string, unknown>;
    this.made += 1;
    if (/^POST \/api\/(moulds|fats|recipes|designs|runs)$/.test(name) && random.next() < 0.8)
      copy['key'] = `fuzz-${String(this.made)}`;
    const change = copy['change'] as Record<string, unknown> | undefined;
    const run = this.runKeys.get(id ?? '');
    if (change?.['run'] !== undefined && run !== undefined) change['run'] = run;
    if (change?.['rest'] !== undefined)
      (change['rest'] as Record<string, unknown>)['key'] = `fuzz-${String(this.made)}`;
    const thing = this.things.get(id ?? 'workshop');
    if (!name.startsWith('PUT') || thing === undefined || random.next() < 0.1) return copy;
    const { version, content, facts } = thing;
    return facts === undefined ? { version, content } : { version, facts };
  }

  /** What is stored of a thing that was changed in the meantime, as a refusal tells it. */
  noteCurrent(id: string | undefined, answer: unknown): void {
    const { current } = answer as Json;
    if (current !== undefined) this.things.set(id ?? 'workshop', current as Json);
  }

  /** Takes note of a success. */
  note({ method, path }: Operation, id: string | undefined, sent: unknown, answer: unknown): void {
    const [, , list = '', , action] = path.split('/');
    const shelf = this.shelves.get(list);
    const body = (answer ?? {}) as Json;
    if (method === 'PUT') this.things.set(id ?? 'workshop', body);
    if (shelf !== undefined && method === 'POST') this.noteThing(shelf, body);
    else if (shelf !== undefined && method === 'DELETE') shelf.delete(id ?? '');
    else if (list === 'runs' && method === 'POST' && action === undefined) this.noteRun(body['run'] as Json);
    else if (action === 'log' && method === 'POST')
      this.entriesOf(id).add(String((body['entry'] as Json)['id']));
    else if (action === 'change') this.noteChange(id, (sent as { change: Json }).change);
  }

  private noteThing(shelf: Set<string>, thing: Json): void {
    const { id, content } = thing;
    shelf.add(String(id));
    this.things.set(String(id), thing);
    this.names.add(String((content as Json)['key']));
  }

  /** A run that is there. */
  noteRun({ id, key }: Json): void {
    this.runs.add(String(id));
    this.runKeys.set(String(id), String(key));
    this.names.add(String(key));
  }

  entriesOf(id = ''): Set<string> {
    const entries = this.logged.get(id) ?? new Set();
    this.logged.set(id, entries);
    return entries;
  }

  private noteChange(id = '', change: Json): void {
    if (change['kind'] === 'split') this.splits += 1;
    if (change['kind'] !== 'drop-parts') return;
    const more = (change['entries'] as readonly unknown[]).length;
    this.loggedByChanges.set(id, (this.loggedByChanges.get(id) ?? 0) + more);
  }
}
