import { describe, expect, it } from 'vitest';
import { countTests } from './count-tests.mjs';

const file = (
  status: string,
  ...tests: string[]
): { status: string; assertionResults: { status: string }[] } => ({
  status,
  assertionResults: tests.map((test) => ({ status: test })),
});

describe('counting tests', () => {
  it('adds up over files', () => {
    const report = {
      testResults: [file('passed', 'passed', 'passed', 'todo'), file('failed', 'failed', 'pending')],
    };
    expect(countTests(report, false)).toEqual({ passed: 2, failed: 1, skipped: 2 });
  });

  it('counts a file that could not be loaded as a failure', () => {
    expect(countTests({ testResults: [file('failed')] }, false)).toEqual({
      passed: 0,
      failed: 1,
      skipped: 0,
    });
  });

  it('counts a failing clean-up after passing tests', () => {
    expect(countTests({ testResults: [file('failed', 'passed')] }, false)).toEqual({
      ...{ passed: 1, failed: 1, skipped: 0 },
    });
  });

  it('does not call a run good that vitest calls bad', () => {
    expect(countTests({ testResults: [file('passed', 'passed')] }, false).failed).toBe(1);
  });

  it('counts nothing when nothing ran', () => {
    expect(countTests({ testResults: [] }, true)).toEqual({ passed: 0, failed: 0, skipped: 0 });
  });
});
