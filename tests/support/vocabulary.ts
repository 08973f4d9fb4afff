import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

/** Those of `#words`, which is not asked for them, as libraries that it knows of use what stands here in their tests. */
export type Language = 'en' | 'de';

/** Where all that is said stands, a folder or a file for each language. */
const places = ['libs/words', 'apps/cli/words', 'apps/web/words', 'apps/api/problems/words'];

/** Texts that stand in English beside the figures that they are about. */
const besideFigures = ['libs/chemistry/fats/table', 'libs/clocks/rules'];

/** The tables of a language. */
function tablesOf(language: Language): string[] {
  const english = besideFigures.flatMap((folder) => readdirSync(folder).map((file) => join(folder, file)));
  const tables = places.flatMap((place) =>
    readdirSync(place, { recursive: true, encoding: 'utf8' })
      .filter(
        (path) => path === `${language}.ts` || (path.startsWith(`${language}/`) && path.endsWith('.ts')),
      )
      .map((path) => join(place, path)),
  );
  return language === 'en' ? [...tables, ...english] : tables;
}

const known = new Map<Language, ReadonlySet<string>>();

/** Every word that stands in the tables of a language, in lower case. */
export function vocabulary(language: Language): ReadonlySet<string> {
  let words = known.get(language);
  if (words === undefined) {
    words = new Set([...tablesOf(language).flatMap(textsIn), ...dayNames(language)].flatMap(wordsIn));
    if (words.size < 1000) throw new Error(`only ${String(words.size)} words were found of ${language}`);
    known.set(language, words);
  }
  return words;
}

/** Days and months as dates have them: “Do.” is a Thursday in German, and no English. */
function dayNames(language: Language): string[] {
  const format = new Intl.DateTimeFormat(language, { weekday: 'short', month: 'short', timeZone: 'UTC' });
  // Every month is met in steps of 32 days, and every weekday.
  return Array.from({ length: 12 }, (_, i) => format.format(Date.UTC(2026, 0, 1 + 32 * i)));
}

/** The words of a text, in lower case, but for single letters. */
export function wordsIn(text: string): string[] {
  return (text.match(/\p{L}[\p{L}\p{M}]+/gu) ?? []).map((word) => word.toLowerCase());
}

/** The texts of a source, but for names of properties and modules. */
function textsIn(file: string): string[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.ES2023);
  const texts: string[] = [];
  const see = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) return;
    if (ts.isPropertyAssignment(node)) {
      see(node.initializer);
      return;
    }
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) {
      texts.push(node.text);
    }
    ts.forEachChild(node, see);
  };
  see(source);
  return texts;
}
