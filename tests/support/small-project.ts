import { spawn, type ChildProcess } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const projectFolder = fileURLToPath(new URL('../../', import.meta.url));

export interface Ended {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface SmallProject {
  readonly folder: string;
  /** Starts one of the launchers; `ended` settles when it is gone. */
  launch(name: string, ...args: string[]): { readonly child: ChildProcess; readonly ended: Promise<Ended> };
  write(path: string, text: string): Promise<void>;
  remove(): Promise<void>;
}

/**
 * Stands in for the TypeScript compiler, which takes seconds: it copies sources that are plain JavaScript, and
 * refuses what Node cannot read.
 */
const compiler = `
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync } from 'node:fs';
for (const folder of ['libs', 'apps/cli']) {
  mkdirSync('dist/' + folder, { recursive: true });
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.ts'))) {
    const output = 'dist/' + folder + '/' + name.replace(/ts$/, 'js');
    copyFileSync(folder + '/' + name, output);
    const checked = spawnSync(process.execPath, ['--check', output], { encoding: 'utf8' });
    process.stderr.write(checked.stderr);
    if (checked.status !== 0) process.exitCode = 2;
  }
}
`;

/**
 * A folder with the real launchers around a program of two lines. Its only package lies beside it, so that npm
 * installs it without a network.
 */
export async function smallProject(): Promise<SmallProject> {
  const folder = await mkdtemp(join(tmpdir(), 'benchtide-launch-'));
  const write = async (path: string, text: string): Promise<void> => {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  };
  await cp(join(projectFolder, 'apps/launch'), join(folder, 'apps/launch'), { recursive: true });
  const about = { name: 'small', version: '1.0.0', devDependencies: { typescript: 'file:compiler' } };
  await write('package.json', JSON.stringify({ ...about, type: 'module', private: true }));
  await write('package-lock.json', JSON.stringify(lockOf(about)));
  await write(
    'compiler/package.json',
    JSON.stringify({ name: 'typescript', version: '1.0.0', type: 'module' }),
  );
  await write('compiler/lib/tsc.js', compiler);
  await write('tsconfig.json', '{}');
  await write(
    'prisma/generate.cjs',
    `require('node:fs').mkdirSync('libs/storage/generated', { recursive: true });`,
  );
  await write('libs/greeting.ts', `export const greeting = 'good tide';`);
  await write(
    'apps/cli/main.ts',
    `import { greeting } from '../../libs/greeting.js';
     console.log([greeting, ...process.argv.slice(2)].join(' '));`,
  );
  return {
    folder,
    write,
    launch: (name, ...args) => launch(folder, name, args),
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}

function lockOf(about: { readonly name: string; readonly version: string }): unknown {
  return {
    ...{ name: about.name, version: about.version, lockfileVersion: 3, requires: true },
    packages: {
      '': about,
      compiler: { name: 'typescript', version: '1.0.0', dev: true },
      'node_modules/typescript': { resolved: 'compiler', link: true },
    },
  };
}

function launch(
  folder: string,
  name: string,
  args: string[],
): { child: ChildProcess; ended: Promise<Ended> } {
  const child = spawn(process.execPath, [join(folder, 'apps/launch', `${name}.mjs`), ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const said = { stdout: '', stderr: '' };
  child.stdout.on('data', (chunk: Buffer) => (said.stdout += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (said.stderr += chunk.toString()));
  const ended = new Promise<Ended>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, ...said }));
  });
  return { child, ended };
}
