import { randomUUID } from 'node:crypto';
import pg from 'pg';

const WEEK_MS = 7 * 24 * 60 * 60_000;
/** Instants and local times as they stand in JSON. */
const TIMES = /"(\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?)((?:Z|[+-]\d\d:\d\d)?)"/g;
/** Revisions that each finished run leaves behind. */
const REVISIONS = 2;

type Row = Record<string, unknown>;

/**
 * Fills the one workshop of a database up to so many finished runs: copies of those that the demo brings, each some weeks
 * earlier and with looks a few minutes apart, with their logs and with old plans as heavy as real ones. Written past the
 * program, as living through them would take hours; what it makes of them is its own affair.
 */
export async function fillPast(databaseUrl: string, finished: number): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query('BEGIN');
    const runs = await rows(client, "SELECT * FROM run WHERE state = 'curing' ORDER BY created_at, id");
    const [plan] = await rows(client, 'SELECT * FROM plan_revision ORDER BY id LIMIT 1');
    if (runs.length === 0 || plan === undefined)
      throw new Error('the demo brings no finished run and no plan');
    for (let n = runs.length; n < finished; n++) {
      await copyRun(client, runs[n % runs.length]!, plan, n);
    }
    await client.query('COMMIT');
    await client.query('ANALYZE');
  } finally {
    await client.end();
  }
}

async function copyRun(client: pg.Client, run: Row, plan: Row, n: number): Promise<void> {
  const id = randomUUID();
  const key = `earlier-${String(n)}`;
  const renamed = (text: string): string =>
    text.replaceAll(`"key":"${String(run['key'])}"`, `"key":"${key}"`);
  const entries = await rows(client, 'SELECT * FROM bench_log WHERE run_id = $1 ORDER BY sequence', [
    run['id'],
  ]);
  await insert(client, 'run', { ...run, id, key, order_: renamed(earlier(run['order_'], n)) });
  for (const { sequence: _next, ...entry } of entries) {
    await insert(client, 'bench_log', {
      ...entry,
      id: randomUUID(),
      run_id: id,
      entry: earlier(entry['entry'], n),
    });
  }
  const planned = String((plan['document'] as { runs: { run: string }[] }).runs[0]?.run);
  for (let number = 1; number <= REVISIONS; number++) {
    const document = earlier(plan['document'], n).replaceAll(`"${planned}"`, `"${key}"`);
    await insert(client, 'plan_revision', {
      ...plan,
      id: randomUUID(),
      run_id: id,
      number,
      document,
      changes: '[]',
    });
  }
}

/** The same content `n` weeks earlier; the times within a run shift by up to a quarter of an hour among the copies. */
function earlier(content: unknown, n: number): string {
  const shift = n * WEEK_MS + (((n * 7) % 31) - 15) * 60_000;
  return JSON.stringify(content).replace(TIMES, (_all, time: string, zone: string) => {
    const at = new Date(Date.parse(`${time}${time.length === 16 ? ':00' : ''}${zone || 'Z'}`) - shift);
    return `"${at.toISOString().slice(0, zone === '' ? 16 : 19)}${zone === '' ? '' : 'Z'}"`;
  });
}

async function rows(client: pg.Client, statement: string, values: unknown[] = []): Promise<Row[]> {
  return (await client.query<Row>(statement, values)).rows;
}

async function insert(client: pg.Client, table: string, row: Row): Promise<void> {
  const values = Object.values(row).map((value) => (isJson(value) ? JSON.stringify(value) : value));
  const places = values.map((_, i) => `$${String(i + 1)}`);
  await client.query(
    `INSERT INTO ${table} (${Object.keys(row).join(', ')}) VALUES (${places.join(', ')})`,
    values,
  );
}

function isJson(value: unknown): boolean {
  return typeof value === 'object' && value !== null && !(value instanceof Date);
}
