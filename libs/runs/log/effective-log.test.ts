import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { effectiveLog } from './effective-log.js';

const at = '2026-11-27T19:00:00Z';
const done = (stage: string): LogEntry => ({ kind: 'done', stage, at });
const takeBack = (entry: string): LogEntry => ({ kind: 'take-back', entry, at });

describe('the lines of a log that stand', () => {
  it('are all of them, called by their id or their place', () => {
    const { effective, issues } = effectiveLog([{ id: 'first', entry: done('a') }, { entry: done('b') }]);
    expect(effective.map(({ ref, place }) => [ref, place])).toEqual([
      ['first', 0],
      ['#2', 1],
    ]);
    expect(issues).toEqual([]);
  });

  it('leave out what was taken back, and the taking back', () => {
    const { effective } = effectiveLog([
      { entry: done('a') },
      { entry: done('b') },
      { entry: takeBack('#1') },
    ]);
    expect(effective.map(({ ref }) => ref)).toEqual(['#2']);
  });

  it('keep what is only to teach nothing', () => {
    const forget: LogEntry = { kind: 'forget', entry: '#1', at };
    const { effective } = effectiveLog([{ entry: done('a') }, { entry: forget }]);
    expect(effective.map(({ entry }) => entry.kind)).toEqual(['done', 'forget']);
  });

  it('have no place for taking back what is not there, or twice', () => {
    const { issues } = effectiveLog([
      { entry: done('a') },
      { entry: takeBack('#7') },
      { entry: takeBack('#1') },
      { entry: takeBack('#1') },
    ]);
    expect(issues).toMatchObject([
      { code: 'log.unknown-entry', path: [1, 'entry'], value: '#7' },
      { code: 'log.unknown-entry', path: [3, 'entry'], value: '#1' },
    ]);
  });

  it('have no place for forgetting what is not there, and name the last that are', () => {
    const forget: LogEntry = { kind: 'forget', entry: '#9', at };
    const lines = ['a', 'b', 'c', 'd'].map((stage) => ({ entry: done(stage) }));
    const { effective, issues } = effectiveLog([...lines, { entry: forget }]);
    expect(effective).toHaveLength(4);
    expect(issues).toEqual([
      { code: 'log.unknown-entry', path: [4, 'entry'], value: '#9', known: ['#2', '#3', '#4'] },
    ]);
  });

  const note = (fields: object): LogEntry => ({ kind: 'note', note: 'words', at, ...fields });

  it('have a corrected note as it was corrected last, and a note about what stood when it was written', () => {
    const { effective, issues } = effectiveLog([
      { entry: done('a') },
      { entry: note({ about: '#1' }) },
      { entry: takeBack('#1') },
      { entry: note({ corrects: '#2' }) },
      { entry: note({ corrects: '#4' }) },
    ]);
    expect(issues).toEqual([]);
    expect(effective.map(({ ref }) => ref)).toEqual(['#5']);
  });

  it('have no place for a note about what is not there, or that corrects what is none', () => {
    const { effective, issues } = effectiveLog([
      { entry: done('a') },
      { entry: note({ corrects: '#1' }) },
      { entry: note({ about: '#9' }) },
    ]);
    expect(effective.map(({ ref }) => ref)).toEqual(['#1']);
    expect(issues).toMatchObject([
      { code: 'log.unknown-entry', path: [1, 'corrects'], value: '#1', known: [] },
      { code: 'log.unknown-entry', path: [2, 'about'], value: '#9', known: ['#1'] },
    ]);
  });
});
