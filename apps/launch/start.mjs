import { existsSync } from 'node:fs';
import { orExplain } from './launch-error.mjs';
import { inProject } from './paths.mjs';
import { ready } from './ready.mjs';

await orExplain(async () => {
  await ready({ need: 'build', log: console.log });
  // Variables that are already set win over the file.
  if (existsSync(inProject('.env'))) process.loadEnvFile(inProject('.env'));
  // In this very process, so that a signal sent to it reaches the server.
  await import(new URL('../../dist/apps/api/main.js', import.meta.url).href);
});
