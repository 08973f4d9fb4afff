import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readProjects } from './read-projects.js';

const folder = mkdtempSync(join(tmpdir(), 'benchtide-projects-'));
afterAll(() => rmSync(folder, { recursive: true }));

const sound = { name: 'a', n: 1, dur: [0, 2, 0], cap: [1], req: [[0], [1], [0]], lags: [[1, 2, 2]] };

describe('readProjects', () => {
  it('reads what is in the file', () =>
    expect(readProjects(written({ instances: [sound] }))).toEqual([sound]));

  it.each([
    [{}, /no list/],
    [{ instances: [{ ...sound, dur: [0, -2, 0] }] }, /a: “dur”/],
    [{ instances: [{ ...sound, dur: [0, 2, 1] }] }, /a: the source and the sink/],
    [{ instances: [{ ...sound, cap: [0.5] }] }, /a: “cap”/],
    [{ instances: [{ ...sound, req: [[0], [1]] }] }, /a: “req”/],
    [{ instances: [{ ...sound, lags: [[1, 3, 2]] }] }, /a: “lags”/],
  ])('says what is wrong with %j', (content, words) => {
    expect(() => readProjects(written(content))).toThrow(words);
  });
});

function written(content: unknown): string {
  const path = join(folder, 'projects.json');
  writeFileSync(path, JSON.stringify(content));
  return path;
}
