import { existsSync } from 'node:fs';
import { readFile, rm, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { smallProject, type SmallProject } from '../../tests/support/small-project.js';

/** One folder and one story: each test finds it as the one before left it. */
describe('getting ready', { concurrent: false }, () => {
  let project: SmallProject;
  const built = (path: string): boolean => existsSync(join(project.folder, 'dist', path));

  beforeAll(async () => {
    project = await smallProject();
  });
  afterAll(() => project.remove());

  it('installs and compiles once when two start at the same moment', async () => {
    const both = await Promise.all([project.launch('cli', 'one').ended, project.launch('cli', 'two').ended]);
    expect(both.map(({ code, stdout }) => ({ code, stdout }))).toEqual([
      { code: 0, stdout: 'good tide one\n' },
      { code: 0, stdout: 'good tide two\n' },
    ]);
    const told = both.map(({ stderr }) => stderr).join('');
    expect(told.match(/Installing packages/g)).toHaveLength(1);
    expect(told.match(/Compiling/g)).toHaveLength(1);
    expect(told.match(/Another start is installing or building here/g)).toHaveLength(1);
    expect(built('.lock')).toBe(false);
  });

  it('says nothing and does nothing when all is as it was', async () => {
    expect(await project.launch('cli').ended).toEqual({ code: 0, stdout: 'good tide\n', stderr: '' });
  });

  it('compiles again when a source has changed', async () => {
    await project.write('libs/greeting.ts', `export const greeting = 'spring tide';\n`);
    const { stdout, stderr } = await project.launch('cli').ended;
    expect(stdout).toBe('spring tide\n');
    expect(stderr).not.toContain('Installing');
  });

  it('bundles the web app with what the API says of itself, and again when only a style has changed', async () => {
    const page = (): Promise<string> => readFile(join(project.folder, 'dist/web/index.html'), 'utf8');
    expect(await page()).toBe(`export type Title = "spring tide"; body { color: teal }`);
    await project.write('apps/web/look.css', 'body { color: navy }');
    expect((await project.launch('cli').ended).stderr).toContain('Bundling the web app');
    expect(await page()).toContain('navy');
    await rm(join(project.folder, 'dist/web'), { recursive: true });
    await project.launch('cli').ended;
    expect(await page()).toContain('navy');
    expect((await project.launch('cli').ended).stderr).toBe('');
  });

  it('removes the output of a source that was removed', async () => {
    await project.write('libs/extra.ts', `export const extra = 1;\n`);
    await project.launch('cli').ended;
    expect(built('libs/extra.js')).toBe(true);
    await rm(join(project.folder, 'libs/extra.ts'));
    await project.launch('cli').ended;
    expect(built('libs/extra.js')).toBe(false);
    expect(built('libs/greeting.js')).toBe(true);
  });

  it('accepts packages that a person installed with npm', async () => {
    await rm(join(project.folder, 'node_modules/.benchtide-install'));
    expect((await project.launch('cli').ended).stderr).toBe('');
  });

  it('shows what the compiler says and no stack of ours when the sources do not compile', async () => {
    await project.write('libs/greeting.ts', `export const greeting = = 'neap tide';\n`);
    const { code, stdout, stderr } = await project.launch('cli').ended;
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toContain('SyntaxError');
    expect(stderr).toContain('The sources do not compile');
    expect(stderr).not.toContain('.mjs');
    await project.write('libs/greeting.ts', `export const greeting = 'neap tide';\n`);
  });

  it('takes over from a start that died', async () => {
    await project.write('dist/.lock', '4194304');
    const longAgo = new Date(Date.now() - 60_000);
    await utimes(join(project.folder, 'dist/.lock'), longAgo, longAgo);
    expect((await project.launch('cli').ended).stdout).toBe('neap tide\n');
  });

  it('stops at a signal, with what it had started, and leaves no lock', async () => {
    await project.write('libs/greeting.ts', `export const greeting = 'ebb tide';\n`);
    await project.write('prisma/generate.cjs', `setTimeout(() => {}, 60_000);`);
    const { child, ended } = project.launch('cli');
    child.stderr?.on('data', (chunk: Buffer) => {
      if (chunk.toString().includes('Generating')) child.kill('SIGTERM');
    });
    expect((await ended).code).toBe(143);
    expect(built('.lock')).toBe(false);
  });
});
