import { orExplain } from './launch-error.mjs';
import { ready } from './ready.mjs';

await orExplain(async () => {
  await ready({ need: 'build' });
  await import(new URL('../../dist/apps/cli/main.js', import.meta.url).href);
});
