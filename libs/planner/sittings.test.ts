import { describe, expect, it } from 'vitest';
import { sittings, type Problem } from '#planner';

const stage = (id: string, duration: number) => ({ id, duration, uses: [], calendar: 'hours' });
const p: Problem = {
  stages: [stage('a', 10), stage('b', 10), stage('c', 10), { id: 'cure', duration: 0, uses: [] }],
  lags: [],
  holds: [],
  resources: [],
  calendars: {
    hours: [
      { from: 0, to: 200 },
      { from: 210, to: 400 },
    ],
  },
  draws: {},
  from: 0,
  until: 400,
};

describe('sittings', () => {
  const stretches = (starts: Record<string, number>, gapMin?: number): string[] =>
    sittings(p, new Map(Object.entries(starts)), gapMin === undefined ? {} : { gapMin }).map(
      ({ start, end, stages }) => `${start}-${end} ${stages.join(' ')}`,
    );

  it('joins stages across a gap of up to 45 minutes and leaves out what needs no hands', () => {
    expect(stretches({ a: 0, b: 55, c: 111, cure: 30 })).toEqual(['0-65 a b', '111-121 c']);
  });

  it('parts where the hours part, however short the break', () => {
    expect(stretches({ a: 190, b: 210, c: 221 })).toEqual(['190-200 a', '210-231 b c']);
  });

  it('counts an overlap once and takes another gap when asked', () => {
    expect(stretches({ a: 0, b: 5, c: 16 }, 0)).toEqual(['0-15 a b', '16-26 c']);
  });
});
