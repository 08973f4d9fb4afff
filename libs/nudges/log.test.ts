import { describe, expect, it } from 'vitest';
import { QuietLog } from '../../tests/nudges/support/quiet-log.js';
import { logChannel } from './channels/log.js';
import { reasonOf } from './log.js';

describe('the reason of what was thrown', () => {
  it('is its message; of one without, its code or its name; of no error, what it is', () => {
    const refused = Object.assign(new AggregateError([], ''), { code: 'ECONNREFUSED' });
    expect([new Error('no route'), refused, new TypeError(''), 'away', undefined].map(reasonOf)).toEqual([
      ...['no route', 'ECONNREFUSED', 'TypeError', 'away', 'undefined'],
    ]);
  });
});

describe('the log as a channel', () => {
  it('notes a delivery and how late it was, and nothing of what it says', async () => {
    const log = new QuietLog();
    const channel = logChannel(log);
    expect(channel.name).toBe('log');
    await channel.send({
      ...{ id: 'n', workshopId: 'w', runId: 'r', stage: 'unmould', attempt: 1, kind: 'last-call' },
      ...{ runTitle: 'Tiles', title: 'Unmould', heading: 'Tiles', text: 'Unmould by 20:45.', sequence: 7 },
      ...{ startAt: null, lastCallAt: null, dueAt: new Date(1_000), deliveredAt: new Date(3_500) },
    });
    expect(log.lines).toEqual([
      {
        ...{ level: 'info', message: 'Nudge delivered' },
        details: {
          ...{ id: 'n', workshopId: 'w', runId: 'r', stage: 'unmould', kind: 'last-call', lateMs: 2_500 },
        },
      },
    ]);
  });
});
