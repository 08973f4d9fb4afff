import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';

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

/** Texts that the linter is to refuse or to accept, each with the file that it is to stand in. */
const samples = {
  refused: [
    ['libs/units', `export const now = Date.now();`, 'no-restricted-properties'],
    ['libs/units', `const { now } = Date;\nexport const at: number = now();`, 'no-restricted-properties'],
    ['libs/units', `export const today = new Date();`, 'project(no-present-time)'],
    ['libs/units', `export const today = Date();`, 'project(no-present-time)'],
    ['libs/units', `export const draw = Math.random();`, 'no-restricted-properties'],
    ['libs/units', `export const draw = globalThis.Math.random();`, 'no-restricted-properties'],
    ['libs/units', `console.log(1);\nexport {};`, 'no-console'],
    [
      'libs/units',
      `export function half(x: number) {\n  return x / 2;\n}`,
      'typescript(explicit-module-boundary-types)',
    ],
    ['libs/units', `export const loose = (x: any): number => Number(x);`, 'typescript(no-explicit-any)'],
    [
      'libs/units',
      `export const soon = (): void => {\n  Promise.resolve(1);\n};`,
      'typescript(no-floating-promises)',
    ],
    [
      'libs/units',
      `export function name(x: 'a' | 'b'): string {\n  switch (x) {\n    case 'a':\n      return x;\n  }\n  return '';\n}`,
      'typescript(switch-exhaustiveness-check)',
    ],
    ...['apps/api', 'libs/storage', 'libs/nudges'].flatMap((folder) => [
      [folder, `export const port = process.env['PORT'];`, 'no-restricted-properties'],
      [folder, `import { env } from 'node:process';\nexport { env };`, 'no-restricted-imports'],
    ]),
    ['apps/web', `export const id = crypto.randomUUID();`, 'project(no-random-uuid)'],
    [
      'apps/web',
      `import { useState } from 'react';\nexport function Page({ on }: { on: boolean }): number {\n  if (on) useState(1);\n  return 1;\n}`,
      'hooks(rules-of-hooks)',
      'tsx',
    ],
  ],
  accepted: [
    ['libs/units', `export const iso = (ms: number): string => new Date(ms).toISOString();`],
    ['libs/units', `export const larger = (a: number, b: number): number => Math.max(a, b);`],
    ['libs/units', `export const now = Date.now();`, 'test.ts'],
    ['libs/storage/embedded', `export const path = process.env['PATH'];`],
    ['tests/support', `import { env } from 'node:process';\nexport { env };`],
  ],
} satisfies Record<string, string[][]>;

describe('the linter', () => {
  let broken: Map<string, string[]>;
  const all = [
    ...samples.refused.map(([folder, text, , ending = 'ts']) => ({ folder, text, ending })),
    ...samples.accepted.map(([folder, text, ending = 'ts']) => ({ folder, text, ending })),
  ].map(({ folder, text, ending }, i) => ({ file: `${folder!}/sample-${String(i)}.${ending}`, text: text! }));

  beforeAll(() => {
    broken = rulesBroken(all);
  });

  it.each(samples.refused.map(([folder, text, rule], i) => ({ folder, text, rule, i })))(
    'refuses in $folder: $text',
    ({ rule, i }) => {
      expect(broken.get(all[i]!.file)?.join(' ')).toContain(rule);
    },
  );

  it.each(samples.accepted.map(([folder, text], i) => ({ folder, text, i: samples.refused.length + i })))(
    'accepts in $folder: $text',
    ({ i }) => {
      expect(broken.get(all[i]!.file)).toEqual([]);
    },
  );
});

/**
 * The rules that texts break, by file, in a project of their own with the linter's settings: rules with types read
 * files, and those of the project itself stay as they are.
 */
function rulesBroken(
  texts: readonly { readonly file: string; readonly text: string }[],
): Map<string, string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'benchtide-lint-'));
  try {
    const write = (file: string, text: string): void => {
      mkdirSync(join(folder, file, '..'), { recursive: true });
      writeFileSync(join(folder, file), `${text}\n`);
    };
    write(
      'tsconfig.json',
      JSON.stringify({ compilerOptions: { strict: true, module: 'nodenext', types: ['node'] } }),
    );
    for (const file of ['.oxlintrc.json', 'tests/check/lint-plugin.mjs']) {
      write(file, readFileSync(join(projectFolder, file), 'utf8'));
    }
    symlinkSync(join(projectFolder, 'node_modules'), join(folder, 'node_modules'));
    for (const { file, text } of texts) write(file, text);
    const oxlint = join(projectFolder, 'node_modules/oxlint/bin/oxlint');
    const { stdout, stderr } = spawnSync(
      process.execPath,
      [oxlint, '--format=json', '--threads=1', ...texts.map(({ file }) => file)],
      { cwd: folder, encoding: 'utf8' },
    );
    if (!stdout.startsWith('{')) throw new Error(`The linter did not run: ${stdout}${stderr}`);
    const { diagnostics } = JSON.parse(stdout) as { diagnostics: { code: string; filename: string }[] };
    return new Map(
      texts.map(({ file }) => [
        file,
        diagnostics.flatMap((each) => (each.filename === file ? each.code : [])),
      ]),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
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
