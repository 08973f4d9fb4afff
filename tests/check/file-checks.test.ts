import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileSizes } from './file-sizes.mjs';
import { forbiddenWords } from './forbidden-words.mjs';
import { projectFiles, projectFolder } from './project-files.mjs';
import { topLevel } from './top-level.mjs';

let folder: string;
beforeAll(async () => {
  await mkdir(join(projectFolder, 'tests/output'), { recursive: true });
  folder = await mkdtemp(join(projectFolder, 'tests/output/files-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function file(name: string, text: string): Promise<string> {
  await writeFile(join(folder, name), text);
  return relative(projectFolder, join(folder, name));
}

describe('file sizes', () => {
  it('accepts 400 lines and refuses 401', async () => {
    const longest = await file('longest.ts', 'x;\n'.repeat(400));
    const tooLong = await file('too-long.ts', 'x;\n'.repeat(401));
    expect(fileSizes([longest, tooLong])).toEqual([`${tooLong}: 401 lines; at most 400`]);
  });
});

describe('the top level', () => {
  it('is the agreed tree and dotfiles', () => {
    expect(
      topLevel(['README.md', '.env.example', 'libs/units/index.ts', 'docs/more.md', 'notes.txt']),
    ).toEqual([expect.stringMatching(/^docs: /), expect.stringMatching(/^notes\.txt: /)]);
  });
});

describe('forbidden words', () => {
  // In pieces, so that this file passes the very check that it tests.
  it.each([
    ['// TO' + 'DO later'],
    ['// FIX' + 'ME'],
    ['it.on' + "ly('x', () => {});"],
    ['describe.ski' + "p('x', () => {});"],
    ['it.tod' + "o('x');"],
    ['// @ts-ignor' + 'e'],
    ["const path = '/hom" + "e/somebody/soap.yaml';"],
    ['<<<<<' + '<< HEAD'],
  ])('%s', async (line) => {
    const path = await file('line.ts', `const fine = 1;\n${line}\n`);
    expect(forbiddenWords([path])).toEqual([expect.stringContaining(`${path}:2: `)]);
  });

  it('leaves ordinary text alone', async () => {
    const path = await file('fine.ts', "export const url = 'https://example.org/home/page'; // only once\n");
    expect(forbiddenWords([path])).toEqual([]);
  });
});

describe('the list of files', () => {
  it('holds what is under version control and nothing ignored', () => {
    const files = projectFiles();
    // Without Git the checks on files report themselves as skipped; there is nothing to compare then.
    if (files === null) return;
    expect(files).toContain('package.json');
    expect(files.filter((path) => /^(node_modules|dist)\//.test(path))).toEqual([]);
  });

  it('holds what is staged, and not what merely lies about', async () => {
    const git = (...args: string[]) => spawnSync('git', args, { cwd: folder });
    if (git('init', '--quiet').status !== 0) return;
    const before = projectFiles(folder);
    await file('start.log', 'Listening.\n');
    await file('staged.ts', 'export {};\n');
    git('add', 'staged.ts');
    expect(before).toEqual([]);
    expect(projectFiles(folder)).toEqual(['staged.ts']);
  });
});
