import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { InboxEntry, RunFile } from '#contract';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

/** Over the night in which the clock goes back in Ireland: 25 October 2026, 01:00Z (IANA time zone database). */
const START = '2026-10-23T18:00';

function autumn(): RunFile {
  const file = loadRunFile('ok', 'two-layer');
  return { ...file, runs: file.runs.map((run) => ({ ...run, startAfter: START })) };
}

function got<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('missing');
  return value;
}

/** Reads server-sent events until there are enough of them. */
async function readEvents(
  bench: TestApi,
  enough: number,
  lastId?: string,
  after?: number,
): Promise<{ id: string; data: InboxEntry }[]> {
  const leave = new AbortController();
  const query = after === undefined ? '' : `?after=${String(after)}`;
  const response = await fetch(`${bench.url}/api/inbox/stream${query}`, {
    headers: {
      authorization: `Bearer ${bench.key}`,
      ...(lastId === undefined ? {} : { 'last-event-id': lastId }),
    },
    signal: leave.signal,
  });
  expect(response.headers.get('content-type')).toBe('text/event-stream');
  const events: { id: string; data: InboxEntry }[] = [];
  let text = '';
  const decoder = new TextDecoder();
  for await (const chunk of response.body ?? []) {
    text += decoder.decode(chunk, { stream: true });
    const blocks = text.split('\n\n');
    text = blocks.pop() ?? '';
    for (const block of blocks) {
      const found = /^id: (.*)\nevent: nudge\ndata: (.*)$/m.exec(block);
      if (found) events.push({ id: found[1] ?? '', data: JSON.parse(found[2] ?? '') as InboxEntry });
    }
    if (events.length >= enough) break;
  }
  leave.abort();
  return events;
}

describe('three days of a run, with the clock going back in the second night', () => {
  let bench: TestApi;
  let runId: string;

  beforeAll(async () => {
    bench = await openTestApi('2026-10-23T16:00:00Z', autumn());
    const [order] = await bench.stock(autumn());
    runId = (await bench.call('POST', '/api/runs', order)).body.run.id;
  });
  afterAll(() => bench.close());

  it('tells the maker to unmould once, at the instant the plan says, as local time reads it', async () => {
    const table = (await bench.call('GET', `/api/runs/${runId}/tide-table`)).body;
    const unmould = table.stages.find((s: { key: string }) => s.key === 'unmould');
    expect(Date.parse(unmould.startAt)).toBeGreaterThan(Date.parse('2026-10-25T01:00:00Z'));

    const streamed = readEvents(bench, 4);
    await bench.walkTo('2026-10-27T22:00:00Z', 30);
    const inbox: InboxEntry[] = (await bench.call('GET', '/api/inbox')).body;
    const told = inbox.filter((n) => n.stage === 'unmould' && n.kind === 'time-for-it');
    expect(told).toHaveLength(1);
    expect(told[0]?.dueAt).toBe(unmould.startAt);
    // Walked in steps of half an hour: delivered in the step in which it fell due.
    const late = Date.parse(told[0]?.deliveredAt ?? '') - Date.parse(unmould.startAt);
    expect(late).toBeGreaterThanOrEqual(0);
    expect(late).toBeLessThan(30 * 60_000);
    expect((await streamed).slice(0, 4).map((e) => e.data.id)).toEqual(inbox.slice(0, 4).map((n) => n.id));
  });

  it('delivers each nudge once, and none in the quiet hours', async () => {
    const inbox: InboxEntry[] = (await bench.call('GET', '/api/inbox')).body;
    expect(new Set(inbox.map((n) => n.id)).size).toBe(inbox.length);
    const local = new Intl.DateTimeFormat('en-GB', {
      timeZone: 'Europe/Dublin',
      hour: '2-digit',
      minute: '2-digit',
    });
    for (const nudge of inbox) {
      const time = local.format(Date.parse(nudge.dueAt));
      expect(time > '07:29' && time <= '22:30', `${nudge.message.code} at ${time}`).toBe(true);
    }
  });

  it('says each as of its delivery, in the language of whoever asks and the zone of the workshop', async () => {
    const inbox: InboxEntry[] = (await bench.call('GET', '/api/inbox')).body;
    const late = inbox.filter(({ message }) => message.code === 'nudge.was-planned');
    const inTime = inbox.filter(({ message }) => message.code === 'nudge.now');
    expect(inTime.length * late.length).toBeGreaterThan(0);
    const behind = ({ deliveredAt, dueAt }: InboxEntry) => Date.parse(deliveredAt ?? '') - Date.parse(dueAt);
    for (const entry of inTime) expect(behind(entry)).toBeLessThanOrEqual(5 * 60_000);
    const first = got(inbox[0]);
    expect(first).toMatchObject({ timeZone: 'Europe/Dublin', message: { saidAt: first.deliveredAt } });
    const asked = await fetch(`${bench.url}/api/inbox`, {
      headers: { authorization: `Bearer ${bench.key}`, 'accept-language': 'de' },
    });
    const german = (await asked.json()) as InboxEntry[];
    const texts = german.map(({ message }) => message.text).join('\n');
    expect(texts).toContain('geplant');
    expect(texts).not.toContain('planned');
    const [streamed] = await readEvents(bench, 1);
    expect(streamed?.data).toEqual(first);
  });

  it('replays to a reader who comes back from where it was', async () => {
    const inbox: InboxEntry[] = (await bench.call('GET', '/api/inbox')).body;
    const seen = inbox[1];
    const events = await readEvents(bench, inbox.length - 2, String(seen?.sequence));
    expect(events.map((e) => e.data.id)).toEqual(inbox.slice(2).map((n) => n.id));
    expect((await bench.call('GET', `/api/inbox?after=${String(seen?.sequence)}`)).body).toEqual(
      inbox.slice(2),
    );
  });

  it('begins at a place that is asked for, unless the reader comes back', async () => {
    const inbox: InboxEntry[] = (await bench.call('GET', '/api/inbox')).body;
    const [first, , third] = inbox.map((n) => n.sequence);
    const begun = await readEvents(bench, inbox.length - 1, undefined, first);
    expect(begun.map((e) => e.data.id)).toEqual(inbox.slice(1).map((n) => n.id));
    const back = await readEvents(bench, inbox.length - 3, String(third), first);
    expect(back.map((e) => e.data.id)).toEqual(inbox.slice(3).map((n) => n.id));
    const refused = await bench.call('GET', '/api/inbox/stream?after=yesterday');
    expect(refused).toMatchObject({ status: 422 });
  });
});
