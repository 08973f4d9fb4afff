import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const pages = fileURLToPath(new URL('../../dist/web/', import.meta.url));

/** The scripts that the page asks for itself and those that they import outright, not when something is opened. */
export function initialScripts(): string[] {
  const html = readFileSync(join(pages, 'index.html'), 'utf8');
  return withImports(
    [...html.matchAll(/<(?:script[^>]*\bsrc|link[^>]*modulepreload[^>]*\bhref)="\/([^"]+\.js)"/g)].map(
      ([, src]) => join(pages, src!),
    ),
  );
}

/** The scripts with the texts of a language, which are asked for before anything is shown; with what they import. */
export function scriptsOfWords(language: string): string[] {
  const found = initialScripts().flatMap((path) =>
    [...readFileSync(path, 'utf8').matchAll(/\bimport\(\s*["'`](\.\/([a-z]+)-[\w-]+\.js)["'`]/g)]
      .filter(([, , name]) => name === language)
      .map(([, from]) => join(dirname(path), from!)),
  );
  return withImports([...new Set(found)]);
}

/** Scripts with those that they import outright. */
function withImports(scripts: readonly string[]): string[] {
  const found = new Set<string>();
  const follow = (path: string): void => {
    if (found.has(path)) return;
    found.add(path);
    const text = readFileSync(path, 'utf8');
    for (const [, from] of text.matchAll(/(?:\bfrom|\bimport)\s*["'](\.{1,2}\/[^"']+\.js)["']/g)) {
      follow(join(dirname(path), from!));
    }
  };
  scripts.forEach(follow);
  return [...found];
}
