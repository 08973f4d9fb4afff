import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { initialScripts } from './initial-scripts.js';

const LARGEST_KB = 150;

describe('the first script of the web app', () => {
  it(`is at most ${LARGEST_KB} kB, gzipped`, () => {
    const scripts = initialScripts();
    expect(scripts.length).toBeGreaterThan(0);
    const bytes = scripts.reduce((sum, path) => sum + gzipSync(readFileSync(path)).length, 0);
    expect(bytes / 1000).toBeGreaterThan(10);
    expect(bytes / 1000).toBeLessThanOrEqual(LARGEST_KB);
  });
});
