import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const pages = fileURLToPath(new URL('../../dist/web/', import.meta.url));

/** The scripts that the page asks for itself and those that they import outright, not when something is opened. */
export function initialScripts(): string[] {
  const html = readFileSync(join(pages, 'index.html'), 'utf8');
  const found = new Set<string>();
  const follow = (path: string): void => {
    if (found.has(path)) return;
    found.add(path);
    const text = readFileSync(path, 'utf8');
    for (const [, from] of text.matchAll(/(?:\bfrom|\bimport)\s*["'](\.{1,2}\/[^"']+\.js)["']/g)) {
      follow(join(dirname(path), from!));
    }
  };
  for (const [, src] of html.matchAll(
    /<(?:script[^>]*\bsrc|link[^>]*modulepreload[^>]*\bhref)="\/([^"]+\.js)"/g,
  )) {
    follow(join(pages, src!));
  }
  return [...found];
}
