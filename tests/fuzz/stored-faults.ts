import type { Operation } from './api-description.js';
import type { Workshop } from './workshop-model.js';

/** What a list is asked for, where it cannot be read whole. */
const NEEDED: Readonly<Record<string, string>> = { '/api/stock/moves': '?material=olive&unit=g' };

type Row = Readonly<Record<string, unknown>>;

/** What is not stored as the answers said, or cannot be read: every list, every run, each of its plans and its log. */
export async function storedFaults(
  url: string,
  workshop: Workshop,
  operations: readonly Operation[],
): Promise<string[]> {
  const faults: string[] = [];
  const read = async (path: string, name = path): Promise<unknown> => {
    const response = await fetch(`${url}${path}`, { headers: { authorization: `Bearer ${workshop.key}` } });
    const text = await response.text();
    const operation = operations.find((each) => each.name === `GET ${name}`);
    const fault =
      response.status === 200
        ? operation?.faultOf(200, response.headers.get('content-type') ?? '', text)
        : `answers ${String(response.status)} ${text.slice(0, 300)}`;
    if (fault !== undefined) faults.push(`afterwards GET ${path}: ${fault}`);
    return text === '' ? undefined : (JSON.parse(text) as unknown);
  };
  const plain = operations.filter(({ method, path }) => method === 'GET' && !/\{|stream/.test(path));
  for (const { path } of plain) await read(`${path}${NEEDED[path] ?? ''}`, path);
  for (const [list, ids] of workshop.shelves) {
    const stored = new Set(
      ((await read(`/api/${list}`)) as Row[])
        .map(({ id }) => String(id))
        .filter((id) => !workshop.before.has(id)),
    );
    for (const id of ids) if (!stored.delete(id)) faults.push(`afterwards ${list} ${id} is not there`);
    for (const id of stored) faults.push(`afterwards ${list} ${id} is there, and nobody was told`);
  }
  const all: Row[] = [];
  for (
    let page = all, before = '';
    before === '' || page.length > 0;
    before = `?before=${String(page[0]?.id)}`
  ) {
    page = (await read(`/api/runs${before}`, '/api/runs')) as Row[];
    all.push(...page);
  }
  const runs = all.filter(({ id }) => !workshop.before.has(String(id)));
  const known = runs.filter(({ id }) => workshop.runs.has(String(id)));
  if (known.length !== workshop.runs.size) faults.push('afterwards a run is not there');
  if (runs.length !== workshop.runs.size + workshop.splits)
    faults.push(
      `afterwards ${String(runs.length - workshop.runs.size)} runs that nobody made, ${String(workshop.splits)} splits`,
    );
  for (const { id } of runs) faults.push(...(await runFaults(String(id), workshop, read)));
  return faults;
}

async function runFaults(
  id: string,
  workshop: Workshop,
  read: (path: string, name?: string) => Promise<unknown>,
): Promise<string[]> {
  const faults: string[] = [];
  for (const view of ['', '/plan', '/tide-table', '/odds', '/plan-input'])
    await read(`/api/runs/${id}${view}`, `/api/runs/{id}${view}`);
  const plans = (await read(`/api/runs/${id}/plans`, '/api/runs/{id}/plans')) as Row[];
  const numbers = plans.map(({ number }) => number);
  if (numbers.some((number, i) => number !== numbers.length - i) || numbers.length === 0)
    faults.push(`afterwards plans of ${id} are numbered ${numbers.join(', ')}`);
  for (const number of numbers)
    await read(`/api/runs/${id}/plans/${String(number)}`, '/api/runs/{id}/plans/{number}');
  const entries = (await read(`/api/runs/${id}/log`, '/api/runs/{id}/log')) as Row[];
  const told = workshop.entriesOf(id);
  const missing = [...told].filter((each) => !entries.some((entry) => entry['id'] === each));
  if (missing.length > 0) faults.push(`afterwards ${String(missing.length)} entries of ${id} are not there`);
  const expected = told.size + (workshop.loggedByChanges.get(id) ?? 0);
  if (workshop.runs.has(id) && entries.length !== expected)
    faults.push(`afterwards ${String(entries.length)} entries of ${id} instead of ${String(expected)}`);
  return faults;
}
