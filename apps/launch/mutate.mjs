import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { folders, testFilesOf } from '../../tests/mutate/tests-of.mjs';
import { LaunchError, orExplain } from './launch-error.mjs';
import { inProject, projectFolder } from './paths.mjs';
import { ready } from './ready.mjs';

const EX_USAGE = 64;

/**
 * `npm run mutate -- libs/hours` (or a folder or file in one) breaks the code there in every way the tool knows, one at a
 * time, and tells what no test noticed. It takes minutes to hours; `MUTATE_WORKERS` says how many at once.
 */
await orExplain(async () => {
  const [path = ''] = process.argv.slice(2);
  const plain = path.replaceAll('\\', '/').replace(/^\.\//, '').replace(/\/$/, '');
  if (testFilesOf(plain) === undefined || !existsSync(inProject(plain))) {
    throw new LaunchError(`Which folder or file? It must lie in one of ${folders.join(', ')}.`, EX_USAGE);
  }
  await ready({ need: 'install' });
  const { status } = spawnSync(
    process.execPath,
    [
      inProject('node_modules', '@stryker-mutator', 'core', 'bin', 'stryker.js'),
      'run',
      inProject('tests', 'mutate', 'stryker.config.mjs'),
    ],
    { cwd: projectFolder, stdio: 'inherit', env: { ...process.env, MUTATE: plain } },
  );
  process.exitCode = status ?? 1;
});
