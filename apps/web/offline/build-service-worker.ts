import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';

/** Alphabets in which no text of ours is written; fetched when a name needs them. */
const RARE_FONTS = /-(cyrillic|cyrillic-ext|greek|greek-ext|vietnamese)-/;

/** Bundles the service worker into `sw.js` at the root of the build and tells it the files of the shell. */
export function buildServiceWorker(publicFiles: readonly string[]): Plugin {
  return {
    name: 'benchtide-service-worker',
    apply: 'build',
    // After the page itself has been written into the bundle.
    enforce: 'post',
    async generateBundle(_options, bundle) {
      const files = ['index.html', ...publicFiles, ...Object.keys(bundle)].filter(
        (name) => !RARE_FONTS.test(name) && !name.endsWith('.map'),
      );
      const hash = createHash('sha256');
      for (const name of [...new Set(files)].sort()) {
        const made = bundle[name];
        hash.update(name).update(made?.type === 'asset' ? made.source : (made?.code ?? ''));
      }
      const shell = {
        version: hash.digest('hex').slice(0, 12),
        files: [...new Set(files)].sort().map((name) => `/${name}`),
      };
      this.emitFile({ type: 'asset', fileName: 'sw.js', source: await bundled(shell) });
    },
  };
}

async function bundled(shell: unknown): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    define: { SHELL: JSON.stringify(shell) },
    build: {
      write: false,
      target: 'es2022',
      rolldownOptions: {
        input: join(import.meta.dirname, 'service-worker.ts'),
        output: { format: 'iife' },
      },
    },
  });
  const outputs = Array.isArray(made) ? made : [made];
  const [chunk] = outputs.flatMap((each) => ('output' in each ? each.output : []));
  if (chunk?.type !== 'chunk') throw new Error('the service worker could not be bundled');
  return chunk.code;
}
