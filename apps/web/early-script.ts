import type { Plugin } from 'vite';

/**
 * Builds a module as a script of its own and puts it before the first script of the page, so that what it asks for is
 * fetched beside that one. While developing there is none: the first script asks for the same.
 */
export function earlyScript(module: string): Plugin {
  return {
    name: 'benchtide-early-script',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: module, name: 'early' });
    },
    transformIndexHtml: {
      order: 'post',
      handler(_html, { bundle = {} }) {
        const made = Object.values(bundle).find(
          (each) => each.type === 'chunk' && each.facadeModuleId === module,
        );
        if (made === undefined) throw new Error(`${module} is not in the build`);
        return [
          {
            tag: 'script',
            attrs: { type: 'module', crossorigin: true, src: `/${made.fileName}` },
            injectTo: 'head-prepend',
          },
        ];
      },
    },
  };
}
