import { tmpdir } from 'node:os';
import { resolve } from 'node:path';
import { seededRandom } from '#units';
import type { RunFile } from '#contract';
import { operationsOf, type ApiDescription, type Operation } from './api-description.js';
import { corpusFrom } from './corpus.js';
import { makeRequest, nestedRequest, type FuzzRequest } from './make-request.js';
import { pick } from './odd-values.js';
import { storedFaults } from './stored-faults.js';
import { Workshop } from './workshop-model.js';

/** What is asked, of whom, and how often. */
export interface FuzzWish {
  readonly url: string;
  readonly key: string;
  readonly requests: number;
  readonly seed: number;
  readonly file: RunFile;
  /** An instant that has just been. */
  readonly now: string;
  /** Called before every request, for those who look on. @returns whether to go on */
  readonly onRequest?: (count: number) => boolean;
}

export interface FuzzFindings {
  /** One line for each answer that should not have been, with what was sent. */
  readonly faults: readonly string[];
  /** Answers by route and status. */
  readonly answers: ReadonlyMap<string, ReadonlyMap<number, number>>;
  readonly slowest: { readonly ms: number; readonly name: string };
}

const HEALTH_EVERY = 25;
const LONGEST_MS = 120_000;

/**
 * Sends requests to every route that the program describes, sound and wrong ones, one after the other, the same for the same
 * seed; looks at each answer, and at what is stored in the end.
 */
export async function runFuzz(wish: FuzzWish): Promise<FuzzFindings> {
  const { url, key, requests, now } = wish;
  const random = seededRandom(wish.seed);
  const description = (await (await fetch(`${url}/api/docs`)).json()) as ApiDescription;
  const operations = operationsOf(description);
  const workshop = new Workshop(key);
  await stock(wish, workshop, operations);
  const material = {
    ...{ random, workshop, definitions: description.components.schemas },
    corpus: corpusFrom(wish.file, key, now),
  };
  const faults: string[] = [];
  const answers = new Map<string, Map<number, number>>();
  let slowest = { ms: 0, name: '' };
  for (let count = 0; count < requests; count += 1) {
    if (wish.onRequest?.(count) === false) break;
    // Each route in turn at first, twice, so that a short run leaves none out.
    const round = Math.floor(count / operations.length);
    const operation =
      (round < 2 ? operations[count % operations.length] : undefined) ?? pick(random, operations);
    const made = makeRequest(operation, material);
    const request = round === 1 ? nestedRequest(made) : made;
    if (signsUsOut(request, key)) continue;
    const begun = performance.now();
    const answer = await send(url, request);
    const ms = performance.now() - begun;
    if (ms > slowest.ms) slowest = { ms, name: operation.name };
    const byStatus = answers.get(operation.name) ?? new Map<number, number>();
    answers.set(operation.name, byStatus);
    byStatus.set(answer.status, (byStatus.get(answer.status) ?? 0) + 1);
    const fault = faultOf(request, answer);
    if (fault !== undefined)
      faults.push(`${operation.name} ${String(answer.status)}: ${fault} ${sentText(request)}`);
    else if (answer.status === 409) workshop.noteCurrent(request.id, parsed(answer.body));
    else if (answer.status < 300)
      workshop.note(operation, request.id, parsed(request.body), parsed(answer.body));
    if (count % HEALTH_EVERY === 0) {
      const health = await fetch(`${url}/api/health`);
      if (health.status !== 200) faults.push(`health is not ok: ${await health.text()}`);
    }
  }
  faults.push(...(await storedFaults(url, workshop, operations)));
  return { faults, answers, slowest };
}

interface Answer {
  readonly status: number;
  readonly type: string;
  readonly body: string;
}

async function send(url: string, { operation, url: path, headers, body }: FuzzRequest): Promise<Answer> {
  try {
    const response = await fetch(`${url}${path}`, {
      ...{ method: operation.method, headers, signal: AbortSignal.timeout(LONGEST_MS) },
      ...(body !== undefined && { body: typeof body === 'string' ? body : new Uint8Array(body) }),
    });
    const type = response.headers.get('content-type') ?? '';
    // A stream does not end by itself.
    if (type.startsWith('text/event-stream')) await response.body?.cancel();
    const text = type.startsWith('text/event-stream') ? '' : await response.text();
    return { status: response.status, type, body: text };
  } catch (cause) {
    return { status: 0, type: '', body: String((cause as Error).cause ?? cause) };
  }
}

/** Machine paths that no answer may tell. */
const PATHS = [resolve('.'), tmpdir(), 'node_modules', 'file:///'];

function faultOf({ operation }: FuzzRequest, { status, type, body }: Answer): string | undefined {
  if (status === 0) return `no answer: ${body}`;
  if (status >= 500 && status !== 503) return `a fault of the program: ${body.slice(0, 300)}`;
  if (/\bat .{1,200}\.[cm]?[jt]s:\d/.test(body)) return 'a stack trace';
  const path = PATHS.find((each) => body.includes(each));
  if (path !== undefined) return `a path of the machine: ${path}`;
  if (body.length > 60_000 && status >= 400) return `a refusal of ${String(body.length)} characters`;
  return operation.faultOf(status, type, body);
}

/** The key that all else is asked with must stay good; signing out and revoking are asked with what is none of ours. */
function signsUsOut({ operation, headers }: FuzzRequest, key: string): boolean {
  return operation.name === 'DELETE /api/session' && headers['authorization'] === `Bearer ${key}`;
}

async function stock(
  { url, key, file }: FuzzWish,
  workshop: Workshop,
  operations: readonly Operation[],
): Promise<void> {
  const lists = [
    ...file.moulds.map((body) => ['moulds', body] as const),
    ...file.recipes.map((body) => ['recipes', body] as const),
    ...file.designs.map((body) => ['designs', body] as const),
    ...file.runs.map((body) => ['runs', body] as const),
  ];
  const headers = { authorization: `Bearer ${key}`, 'content-type': 'application/json' };
  for (const list of [...workshop.shelves.keys(), 'runs']) {
    const there = (await (await fetch(`${url}/api/${list}`, { headers })).json()) as { id: string }[];
    for (const { id } of there) workshop.before.add(id);
  }
  const facts: unknown = await (await fetch(`${url}/api/workshop`, { headers })).json();
  workshop.noteCurrent(undefined, { current: facts });
  for (const [list, content] of lists) {
    const body = { ...content, ...(list === 'runs' && { key: 'fuzz-first' }) };
    const response = await fetch(`${url}/api/${list}`, {
      method: 'POST',
      headers,
      body: JSON.stringify(body),
    });
    const answer: unknown = await response.json();
    // The demo of a first start may have brought it.
    if (response.status === 409) continue;
    if (response.status !== 201) throw new Error(`${list}: ${JSON.stringify(answer)}`);
    const operation = operations.find(({ name }) => name === `POST /api/${list}`);
    if (operation !== undefined) workshop.note(operation, undefined, body, answer);
  }
}

function parsed(body: string | Buffer | undefined): unknown {
  return typeof body === 'string' && body !== '' ? (JSON.parse(body) as unknown) : undefined;
}

function sentText({ url, headers, body }: FuzzRequest): string {
  const { authorization: _key, ...rest } = headers;
  return `${url.slice(0, 200)} ${JSON.stringify(rest)} ${String(body ?? '').slice(0, 1500)}`;
}
