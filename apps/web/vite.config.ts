import react from '@vitejs/plugin-react';
import { join } from 'node:path';
import { defineConfig } from 'vite';
import { earlyScript } from './early-script.js';
import { buildServiceWorker } from './offline/build-service-worker.js';

/** Where the API of a program that was started beside this is; for `vite` while developing. */
const API = 'http://127.0.0.1:4780';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [
    react(),
    earlyScript(join(import.meta.dirname, 'early-words.ts')),
    buildServiceWorker(['icon.svg', 'manifest.webmanifest']),
  ],
  resolve: { conditions: ['source', 'module', 'browser', 'default'] },
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    // Nothing may stand in the page itself: the content security policy forbids it.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  // Not the sources of our own in the folder `api`.
  server: { proxy: { '^/api/(?!.*[.]ts)': API } },
});
