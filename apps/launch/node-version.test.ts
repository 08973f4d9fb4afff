import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { nodeVersionProblem } from './node-version.mjs';

describe('the version of Node', () => {
  it.each(['20.19.0', '20.20.2', '22.12.0', '22.23.3', '24.0.0', '24.21.0', '25.1.0'])(
    '%s will do',
    (version) => {
      expect(nodeVersionProblem(version)).toBeNull();
    },
  );

  it.each(['18.20.4', '20.18.3', '21.7.3', '22.11.0', '23.11.0'])(
    '%s is refused in a sentence',
    (version) => {
      expect(nodeVersionProblem(version)).toMatch(
        new RegExp(`needs Node 20\\.19 .* this is Node ${version}\\.$`),
      );
    },
  );

  it('is what package.json asks for', async () => {
    const { engines } = JSON.parse(await readFile(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(engines.node).toBe('^20.19.0 || ^22.12.0 || >=24.0.0');
  });
});
