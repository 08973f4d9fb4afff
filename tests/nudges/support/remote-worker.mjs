// Plain Node cannot run the TypeScript beside it, and the tests need no build; the test runner's own loader can.
import { createViteServer } from 'vitest/node';

const root = new URL('../../..', import.meta.url).pathname;
const loader = await createViteServer({
  root,
  configFile: false,
  appType: 'custom',
  logLevel: 'error',
  optimizeDeps: { noDiscovery: true },
  server: { middlewareMode: true, ws: false, watch: null, hmr: false },
  resolve: { conditions: ['source', 'module', 'node', 'default'] },
  ssr: { resolve: { conditions: ['source', 'module', 'node', 'default'] } },
});
await loader.ssrLoadModule(`${root}tests/nudges/support/remote-worker-process.ts`);
await loader.close();
