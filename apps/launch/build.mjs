import { compile } from './compile.mjs';
import { orExplain } from './launch-error.mjs';
import { withLock } from './lock.mjs';
import { ready } from './ready.mjs';

const log = console.log;

await orExplain(async () => {
  await ready({ need: 'install', log });
  // Asked for by name, so done even when nothing seems to have changed.
  await withLock(log, () => compile(log));
  log('Built.');
});
