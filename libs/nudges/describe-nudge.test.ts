import { describe, expect, it } from 'vitest';
import { describeNudge, type NudgeFacts } from './describe-nudge.js';

const at = (time: string): Date => new Date(`2026-11-27T${time}:00.000Z`);
const nudge = (over: Partial<NudgeFacts> = {}): NudgeFacts => ({
  kind: 'time-for-it',
  title: 'Unmould',
  startAt: at('18:10'),
  lastCallAt: at('20:45'),
  dueAt: at('18:10'),
  ...over,
});

describe('what a nudge says', () => {
  it.each([
    ['a minute before the start', 'time-for-it', '18:09', 'nudge.planned'],
    ['at the start', 'time-for-it', '18:10', 'nudge.now'],
    ['while it is as good as then', 'time-for-it', '18:15', 'nudge.now'],
    ['late', 'time-for-it', '18:16', 'nudge.was-planned'],
    ['after the last call', 'time-for-it', '20:51', 'nudge.last-call-over'],
    ['as the window opens', 'window-opens', '17:00', 'nudge.window-opens'],
    ['late, of the opening', 'window-opens', '18:16', 'nudge.was-planned'],
    ['before the last call', 'last-call', '20:15', 'nudge.last-call'],
    ['after it, of the last call', 'last-call', '20:51', 'nudge.last-call-over'],
  ] as const)('%s: a %s at %s says %s', (_, kind, time, code) => {
    const said = describeNudge(nudge({ kind }), at(time));
    expect(said).toMatchObject({ code, stage: 'Unmould', saidAt: at(time).toISOString() });
  });

  it('gives the times of the plan', () => {
    expect(describeNudge(nudge(), at('19:00'))).toEqual({
      code: 'nudge.was-planned',
      stage: 'Unmould',
      startAt: '2026-11-27T18:10:00.000Z',
      lastCallAt: '2026-11-27T20:45:00.000Z',
      saidAt: '2026-11-27T19:00:00.000Z',
    });
  });

  it('goes by its alarm where the times are not known', () => {
    const old = { startAt: null, lastCallAt: null };
    expect(describeNudge(nudge(old), at('18:10'))).toMatchObject({ code: 'nudge.now', lastCallAt: null });
    expect(describeNudge(nudge(old), at('19:00'))).toMatchObject({
      code: 'nudge.was-planned',
      startAt: '2026-11-27T18:10:00.000Z',
    });
    expect(describeNudge(nudge({ ...old, kind: 'window-opens' }), at('18:10'))).toMatchObject({
      code: 'nudge.window-opens',
      startAt: null,
    });
  });
});
