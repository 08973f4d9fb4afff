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
for (const folder of ['libs', 'apps/cli', 'apps/api/docs']) {
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

/** Stands in for what makes types from a description: a line that names where it came from. */
const typeMaker = `
import { readFileSync, writeFileSync } from 'node:fs';
const [description, , output] = process.argv.slice(2);
writeFileSync(output, 'export type Title = ' + JSON.stringify(JSON.parse(readFileSync(description, 'utf8')).title) + ';');
`;

/** Stands in for the bundler: the page is the types of the API and the one style, together. */
const bundler = `
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
mkdirSync('dist/web', { recursive: true });
const parts = ['apps/web/api/schema.d.ts', 'apps/web/look.css'].map((path) => readFileSync(path, 'utf8'));
writeFileSync('dist/web/index.html', parts.join(' '));
`;

/** The packages of the small project: where each lies, the script it brings, and what that does. */
const packages = [
  { name: 'typescript-native', script: 'bin/tsc', text: compiler },
  { name: 'openapi-typescript', script: 'bin/cli.js', text: typeMaker },
  { name: 'vite', script: 'bin/vite.js', text: bundler },
];

/**
 * A folder with the real launchers around a program of two lines and a page of two. Its packages lie beside it, so
 * that npm installs them without a network.
 */
export async function smallProject(): Promise<SmallProject> {
  const folder = await mkdtemp(join(tmpdir(), 'benchtide-launch-'));
  const write = async (path: string, text: string): Promise<void> => {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  };
  await cp(join(projectFolder, 'apps/launch'), join(folder, 'apps/launch'), { recursive: true });
  const devDependencies = Object.fromEntries(packages.map(({ name }) => [name, `file:tools/${name}`]));
  const about = { name: 'small', version: '1.0.0', devDependencies };
  await write('package.json', JSON.stringify({ ...about, type: 'module', private: true }));
  await write('package-lock.json', JSON.stringify(lockOf(about)));
  for (const { name, script, text } of packages) {
    await write(`tools/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', type: 'module' }));
    await write(`tools/${name}/${script}`, text);
  }
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
  await write(
    'apps/api/docs/write-document.ts',
    `import { writeFileSync } from 'node:fs';
     import { greeting } from '../../../libs/greeting.js';
     writeFileSync('dist/openapi.json', JSON.stringify({ title: greeting }));`,
  );
  await write('apps/web/api/note.txt', 'Types of the API are written beside this.');
  await write('apps/web/look.css', 'body { color: teal }');
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
      ...Object.fromEntries(
        packages.flatMap(({ name }) => [
          [`tools/${name}`, { name, version: '1.0.0', dev: true }],
          [`node_modules/${name}`, { resolved: `tools/${name}`, link: true }],
        ]),
      ),
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
