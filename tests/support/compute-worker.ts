import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { build } from 'vite';

const root = join(import.meta.dirname, '..', '..');

/**
 * The file that threads of the pool run, made from the sources as they are now: a thread does not see what the test
 * runner makes of TypeScript. Made once in each process, packages left where they are.
 */
export async function computeWorker(): Promise<string> {
  const file = join(root, 'tests', 'output', 'compute', `worker-${String(process.pid)}.mjs`);
  made ??= bundle(file);
  await made;
  return file;
}

let made: Promise<void> | undefined;

async function bundle(file: string): Promise<void> {
  mkdirSync(dirname(file), { recursive: true });
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    resolve: { conditions: ['source', 'module', 'node', 'default'] },
    ssr: { resolve: { conditions: ['source', 'module', 'node', 'default'] }, target: 'node' },
    build: {
      ssr: join(root, 'apps', 'api', 'compute', 'worker.ts'),
      outDir: dirname(file),
      emptyOutDir: false,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { entryFileNames: `${String(process.pid)}.tmp.mjs` } },
    },
  });
  const written = join(dirname(file), `${String(process.pid)}.tmp.mjs`);
  if (!existsSync(written)) throw new Error('The worker of the tests was not made.');
  renameSync(written, file);
  process.once('exit', () => rmSync(file, { force: true }));
}
