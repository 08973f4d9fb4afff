import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import ts from 'typescript';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';

const projectFolder = fileURLToPath(new URL('../../', import.meta.url));

describe('the compiler settings of the pure libraries', () => {
  it.each([
    ['Node’s process', `export const here = process.cwd();`],
    [
      'Node’s files',
      `import { readFileSync } from 'node:fs';\nexport const text = readFileSync('x', 'utf8');`,
    ],
    ['Node’s Buffer', `export const bytes = Buffer.from('x');`],
    ['a timer', `setTimeout(() => undefined, 1);\nexport {};`],
    ['the console', `console.log('x');\nexport {};`],
    ['the network', `export const answer = fetch('http://localhost');`],
    ['a page', `export const title = document.title;`],
    ['a browser’s store', `export const kept = localStorage.getItem('x');`],
  ])('do not know %s', (_what, source) => {
    expect(compileErrors(source)).not.toEqual([]);
  });

  it('know the language itself', () => {
    expect(compileErrors(`export const last = (list: number[]): number | undefined => list.at(-1);`)).toEqual(
      [],
    );
  });
});

describe('the linter', () => {
  const overrideConfigFile = join(projectFolder, '.eslint.config.mjs');
  const eslint = new ESLint({
    cwd: projectFolder,
    overrideConfigFile,
    // On a CI machine the parser would take the types of the file on disk instead of those of the text.
    overrideConfig: [{ languageOptions: { parserOptions: { disallowAutomaticSingleRunInference: true } } }],
  });
  /** For files that need not exist: the rules that need types are off. */
  const untyped = new ESLint({
    cwd: projectFolder,
    overrideConfigFile,
    overrideConfig: [tseslint.configs.disableTypeChecked],
  });

  it.each([
    [`export const now = Date.now();`, 'no-restricted-properties'],
    [`const { now } = Date;\nexport const at: number = now();`, 'no-restricted-properties'],
    [`export const today = new Date();`, 'no-restricted-syntax'],
    [`export const today = Date();`, 'no-restricted-syntax'],
    [`export const draw = Math.random();`, 'no-restricted-properties'],
    [`export const draw = globalThis.Math.random();`, 'no-restricted-properties'],
    [
      `export function half(x: number) {\n  return x / 2;\n}`,
      '@typescript-eslint/explicit-module-boundary-types',
    ],
    [`export const loose = (x: any): number => Number(x);`, '@typescript-eslint/no-explicit-any'],
    [
      `export const soon = (): void => {\n  Promise.resolve(1);\n};`,
      '@typescript-eslint/no-floating-promises',
    ],
    [
      `export function name(x: 'a' | 'b'): string {\n  switch (x) {\n    case 'a':\n      return x;\n  }\n  return '';\n}`,
      '@typescript-eslint/switch-exhaustiveness-check',
    ],
  ])('refuses in a pure library: %s', async (source, rule) => {
    expect(await rulesBroken(eslint, 'libs/units/instants.ts', `${source}\n`)).toContain(rule);
  });

  it.each([
    `export const iso = (ms: number): string => new Date(ms).toISOString();`,
    `export const larger = (a: number, b: number): number => Math.max(a, b);`,
  ])('accepts in a pure library: %s', async (source) => {
    expect(await rulesBroken(eslint, 'libs/units/instants.ts', `${source}\n`)).toEqual([]);
  });

  describe.each([
    `export const port = process.env['PORT'];\n`,
    `import { env } from 'node:process';\nexport { env };\n`,
  ])('on reading the environment: %s', (source) => {
    it.each(['apps/api/server.ts', 'libs/storage/connect.ts', 'libs/nudges/queue.ts'])(
      'refuses it in %s',
      async (file) => {
        expect((await rulesBroken(untyped, file, source)).join()).toMatch(
          /no-restricted-(properties|imports)/,
        );
      },
    );

    it.each(['apps/api/config.ts', 'tests/support/redis.ts'])('accepts it in %s', async (file) => {
      expect(await rulesBroken(untyped, file, source)).toEqual([]);
    });
  });
});

/** @returns the rules that the text breaks, were it what stands in that file */
async function rulesBroken(eslint: ESLint, file: string, source: string): Promise<string[]> {
  const [result] = await eslint.lintText(source, { filePath: join(projectFolder, file) });
  return [...new Set(result?.messages.map(({ ruleId, message }) => ruleId ?? message))];
}

/** @returns what the compiler says of a file with this text, were it in a pure library */
function compileErrors(source: string): string[] {
  const configFile = join(projectFolder, 'libs/tsconfig.pure.json');
  const config = ts.getParsedCommandLineOfConfigFile(configFile, undefined, {
    ...ts.sys,
    onUnRecoverableConfigFileDiagnostic: ({ messageText }) => {
      throw new Error(ts.flattenDiagnosticMessageText(messageText, ' '));
    },
  });
  if (config === undefined) throw new Error(`${configFile} could not be read`);
  const file = join(projectFolder, 'libs/units/imagined.ts');
  const options: ts.CompilerOptions = {
    ...config.options,
    composite: false,
    incremental: false,
    noEmit: true,
  };
  delete options.tsBuildInfoFile;
  const host = ts.createCompilerHost(options);
  const program = ts.createProgram([file], options, {
    ...host,
    fileExists: (path) => path === file || host.fileExists(path),
    readFile: (path) => (path === file ? source : host.readFile(path)),
    getSourceFile: (path, ...rest) =>
      path === file
        ? ts.createSourceFile(path, source, { languageVersion: ts.ScriptTarget.ES2023 })
        : host.getSourceFile(path, ...rest),
  });
  return ts
    .getPreEmitDiagnostics(program)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
}
