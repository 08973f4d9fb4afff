import { expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { checkEntry, writeClocks, type RunsInput } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const withLog = (...entries: LogEntry[]): RunsInput => ({
  ...file,
  log: entries.map((entry) => ({ run: 'cups', entry })),
});
const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:30:00Z' };

/** The layer takes 20 minutes to mix, so begun 4 minutes after the pour it goes on 24 minutes after it. */
it('takes a layer for held when it was poured on, not when its mixing began', () => {
  const over: LogEntry = {
    kind: 'done',
    stage: 'pour-over',
    startedAt: '2026-11-27T18:34:00Z',
    at: '2026-11-27T19:00:00Z',
  };
  const written = writeClocks(withLog(under, over));
  if (!written.ok) throw new Error(JSON.stringify(written.issues));
  const part = written.value.runs[0]?.parts.find((each) => each.part === 'under');
  const held = part?.clocks.find(({ state }) => state === 'holds-layer');
  expect(held?.now.high).toBeLessThanOrEqual(24);
  expect(held?.now.high).toBeGreaterThan(20);
});

it('refuses a weigh-in from before the soap was out of its moulds', () => {
  const log = [
    under,
    { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' },
    { kind: 'done', stage: 'unmould', startedAt: '2026-11-29T18:00:00Z', at: '2026-11-29T18:20:00Z' },
  ] as const;
  const weighIn = (at: string): LogEntry => ({ kind: 'weigh-in', pieces: 6, massG: 480, at });
  expect(checkEntry(withLog(...log), 'cups', weighIn('2026-11-29T18:19:00Z'))).toMatchObject([
    { code: 'log.cure-not-begun', stage: 'Unmould' },
  ]);
  expect(checkEntry(withLog(...log), 'cups', weighIn('2026-11-29T18:20:00Z'))).toEqual([]);
});
