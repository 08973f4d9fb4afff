import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { expect, it, onTestFinished } from 'vitest';
import { compressBelow } from './compress.mjs';

it('lays copies beside text that is long enough, and they hold the same', () => {
  const folder = mkdtempSync(join(tmpdir(), 'benchtide-compress-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  mkdirSync(join(folder, 'assets'));
  const script = 'export const tide = "in";\n'.repeat(200);
  writeFileSync(join(folder, 'assets', 'long.js'), script);
  writeFileSync(join(folder, 'short.css'), 'body{}');
  writeFileSync(join(folder, 'assets', 'letters.woff2'), 'x'.repeat(5_000));
  compressBelow(folder);
  expect(readdirSync(folder).sort()).toEqual(['assets', 'short.css']);
  const below = join(folder, 'assets');
  expect(readdirSync(below).sort()).toEqual(['letters.woff2', 'long.js', 'long.js.br', 'long.js.gz']);
  const [br, gz] = ['br', 'gz'].map((ending) => readFileSync(join(below, `long.js.${ending}`)));
  expect(brotliDecompressSync(br!).toString()).toBe(script);
  expect(gunzipSync(gz!).toString()).toBe(script);
  expect(br!.length).toBeLessThan(script.length / 10);
});
