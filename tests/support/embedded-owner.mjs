/**
 * A process that owns a built-in database, for tests to kill. Run as: node embedded-owner.mjs HOME.
 * Prints one line of JSON, what it started or why it did not, and stops the database on SIGTERM.
 */
import { createViteServer } from 'vitest/node';

const root = new URL('../..', import.meta.url).pathname;
const loader = await createViteServer({
  root,
  configFile: false,
  appType: 'custom',
  logLevel: 'error',
  optimizeDeps: { noDiscovery: true },
  server: { middlewareMode: true, ws: false, watch: null, hmr: false },
});
const { startEmbeddedPostgres } = await loader.ssrLoadModule(
  `${root}libs/storage/embedded/start-embedded-postgres.ts`,
);
await loader.close();

try {
  const home = process.argv[2];
  const postgres = await startEmbeddedPostgres({ home, log: () => undefined, settings: { fsync: false } });
  process.on('SIGTERM', () => void postgres.stop().then(() => process.exit(0)));
  const { databaseUrl, adopted, dataFolder } = postgres;
  console.log(JSON.stringify({ databaseUrl, adopted, dataFolder }));
  setInterval(() => undefined, 60_000);
} catch (error) {
  const { name, message } = /** @type {Error} */ (error);
  console.log(JSON.stringify({ error: { name, message } }));
  process.exit(1);
}
