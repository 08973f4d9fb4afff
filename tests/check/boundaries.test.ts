import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cruise, type ICruiseOptions, type ICruiseResult } from 'dependency-cruiser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const projectFolder = fileURLToPath(new URL('../../', import.meta.url));
const config = createRequire(import.meta.url)('../../.dependency-cruiser.cjs') as {
  forbidden: NonNullable<ICruiseOptions['ruleSet']>['forbidden'];
  options: ICruiseOptions;
};

/** Its files import each other in no circle, but its folders do. */
const folderCircle: readonly [file: string, source: string][] = [
  ['libs/units/one/goes-out.ts', `export * from '../two/stays.js';`],
  ['libs/units/two/comes-back.ts', `export * from '../one/stays.js';`],
  ['libs/units/one/stays.ts', `export const one = 1;`],
  ['libs/units/two/stays.ts', `export const two = 2;`],
];

/** Each file breaks just the one rule named beside it. */
const mustFail: readonly [file: string, source: string, rule: string][] = [
  ['libs/units/looks-ahead.ts', `export * from '#chemistry';`, 'flow-of-units'],
  ['libs/chemistry/looks-ahead.ts', `export * from '#planner';`, 'flow-of-chemistry'],
  ['libs/chemistry/knows-the-wire.ts', `export * from '#contract';`, 'flow-of-chemistry'],
  ['libs/clocks/looks-ahead.ts', `export type { Thing } from '#runs';`, 'flow-of-clocks'],
  ['libs/planner/looks-ahead.ts', `export * from '#hours';`, 'flow-of-planner'],
  ['libs/planner/knows-soap.ts', `export * from '#chemistry';`, 'flow-of-planner'],
  ['libs/hours/looks-ahead.ts', `export * from '#storage';`, 'flow-of-hours'],
  ['libs/contract/knows-chemistry.ts', `export * from '#chemistry';`, 'flow-of-contract'],
  ['libs/runs/stores.ts', `export * from '#storage';`, 'flow-of-runs'],
  ['libs/words/knows-soap.ts', `export * from '#runs';`, 'flow-of-words'],
  ['libs/storage/nudges.ts', `export * from '#nudges';`, 'flow-of-storage'],
  ['libs/nudges/stores.ts', `export * from '#storage';`, 'flow-of-nudges'],
  ['libs/chemistry/goes-round-the-index.ts', `export * from '../units/inside.js';`, 'through-the-index'],
  [
    'apps/api/goes-round-the-index.ts',
    `export * from '../../libs/units/inside.js';`,
    'apps-through-the-index',
  ],
  ['libs/chemistry/uses-a-package.ts', `import 'zod';`, 'packages-of-chemistry'],
  ['libs/contract/uses-another-package.ts', `import 'fast-check';`, 'packages-of-contract'],
  ['libs/contract/names/knows-a-schema.ts', `export * from '../schema.js';`, 'names-alone'],
  ['libs/planner/reads-files.ts', `import 'node:fs';`, 'pure-without-node'],
  ['libs/storage/local-time.ts', `import 'luxon';`, 'luxon-in-hours'],
  ['apps/api/asks-the-database.ts', `import '@prisma/client';`, 'database-client-in-storage'],
  ['libs/storage/queues.ts', `import 'bullmq';`, 'queue-in-nudges'],
  ['apps/worker/queues.ts', `import 'ioredis';`, 'queue-in-nudges'],
  ['libs/nudges/calls-an-app.ts', `export * from '../../apps/api/index.js';`, 'no-app-from-a-library'],
  ['apps/worker/calls-an-app.ts', `export * from '../api/index.js';`, 'no-app-from-an-app'],
  ['apps/cli/stores.ts', `export * from '#storage';`, 'no-database-in-cli-and-web'],
  ['libs/runs/leans-on-a-test.ts', `export * from './some.test.js';`, 'no-tests-in-the-product'],
  ['libs/units/round.ts', `export * from './trip.js';`, 'no-circle'],
  ['libs/runs/misspelt.ts', `export * from './nowhere.js';`, 'resolvable'],
];

const mayStay: readonly [file: string, source: string][] = [
  ['libs/runs/uses-what-came-before.ts', `export * from '#planner';\nexport * from '#contract';`],
  ['libs/nudges/queues.ts', `import 'bullmq';\nexport * from '#contract';`],
  ['libs/hours/zones.ts', `import 'luxon';\nexport * from '#units';`],
  ['libs/contract/schema.ts', `import 'zod';`],
  ['libs/storage/client.ts', `import '@prisma/client';\nimport 'node:fs';`],
  ['libs/chemistry/beside.test.ts', `import 'fast-check';\nimport 'node:fs';\nexport * from '#chemistry';`],
  ['apps/web/offers.ts', `export * from '#contract/names';`],
  ['apps/api/answers.ts', `import '@nestjs/common';\nexport * from '#nudges';`],
];

const libraries = 'units contract chemistry clocks planner hours runs words storage nudges'.split(' ');
const scenery: readonly [file: string, source: string][] = [
  ...libraries.map((name): [string, string] => [`libs/${name}/index.ts`, `export interface Thing {}`]),
  ['libs/contract/names/index.ts', `export const names = 1;`],
  ['libs/units/inside.ts', `export const inside = 1;`],
  ['libs/units/trip.ts', `export * from './round.js';`],
  ['libs/runs/some.test.ts', `export const some = 1;`],
  ['apps/api/index.ts', `export const api = 1;`],
];

describe('the boundaries of the libraries', () => {
  let folder: string;
  let broken: ReadonlyMap<string, readonly string[]>;

  beforeAll(async () => {
    await mkdir(join(projectFolder, 'tests/output'), { recursive: true });
    folder = await mkdtemp(join(projectFolder, 'tests/output/boundaries-'));
    for (const [file, source] of [...mustFail, ...mayStay, ...folderCircle, ...scenery]) {
      await mkdir(dirname(join(folder, file)), { recursive: true });
      await writeFile(join(folder, file), `${source}\n`);
    }
    // The short names of the libraries are resolved as in the project itself.
    const { imports } = JSON.parse(await readFile(join(projectFolder, 'package.json'), 'utf8'));
    await writeFile(join(folder, 'package.json'), JSON.stringify({ type: 'module', imports }));
    broken = await brokenRules(folder);
  });

  afterAll(() => rm(folder, { recursive: true, force: true }));

  it.each(mustFail)('%s (%s) breaks %s', (file, _source, rule) => {
    expect(broken.get(file)).toEqual([rule]);
  });

  it.each(mayStay)('%s breaks nothing', (file) => {
    expect(broken.get(file)).toBeUndefined();
  });

  it('sees folders in a circle where files are in none', () => {
    expect(broken.get('libs/units/one')).toEqual(['no-folder-circle']);
    expect(broken.get('libs/units/two')).toEqual(['no-folder-circle']);
    for (const [file] of folderCircle) expect(broken.get(file)).toBeUndefined();
  });

  it('has a file that must fail for every kind of rule', () => {
    const kinds = (names: readonly string[]): Set<string> =>
      new Set(names.map((name) => name.replace(/^(flow|packages)-of-.*/, '$1')));
    expect(kinds([...mustFail.map(([, , rule]) => rule), 'no-folder-circle'])).toEqual(
      kinds((config.forbidden ?? []).map(({ name }) => name ?? '')),
    );
  });
});

describe('the table of DEVELOPERS.md', () => {
  const flow = new Map(
    (config.forbidden ?? []).flatMap((rule) => {
      const [, library] = /^flow-of-(.*)$/.exec(rule.name ?? '') ?? [];
      const [, allowed = ''] = ('to' in rule && /\((.*)\)/.exec(String(rule.to.pathNot))) || [];
      return library === undefined ? [] : [[library, new Set(allowed.split('|'))]];
    }),
  );
  const packages = new Set(
    (config.forbidden ?? []).flatMap(({ name = '' }) => /^packages-of-(.*)$/.exec(name)?.slice(1) ?? []),
  );

  it('says what the rules say that each library may import', async () => {
    const told = new Map<string, ReadonlySet<string>>();
    for (const [, library = '', knows = ''] of (await developers()).matchAll(LIBRARY_ROW)) {
      const above = knows === 'all above' ? [...told.keys()] : knows.match(/[a-z]+/g);
      told.set(library, new Set([library, ...(above ?? []).filter((name) => libraries.includes(name))]));
    }
    expect([...told.keys()].sort()).toEqual([...libraries].sort());
    expect(flow).toEqual(told);
  });

  it('calls those pure that may use no package but the one agreed', async () => {
    const [, names = ''] = /programs\. ([a-z, \n]+) are pure:/.exec(await developers()) ?? [];
    expect(packages).toEqual(new Set(names.replace(/\s+/g, ' ').split(/, | and /)));
  });
});

/** Of the table: the library, and what it knows of up to a remark. */
const LIBRARY_ROW = /^\|[^|]*\| `libs\/([a-z]+)` +\| ([^|;]*?) *(?:;[^|]*)?\|$/gm;

function developers(): Promise<string> {
  return readFile(join(projectFolder, 'DEVELOPERS.md'), 'utf8');
}

/** @returns the names of the rules each file breaks, by its path; those of a folder, by its own */
async function brokenRules(folder: string): Promise<ReadonlyMap<string, readonly string[]>> {
  const { enhancedResolveOptions, doNotFollow, tsPreCompilationDeps } = config.options;
  const { output } = await cruise(
    ['libs', 'apps'],
    {
      doNotFollow,
      tsPreCompilationDeps,
      baseDir: folder,
      validate: true,
      ruleSet: { forbidden: config.forbidden },
    },
    enhancedResolveOptions,
  );
  const broken = new Map<string, string[]>();
  for (const { from, rule } of (output as ICruiseResult).summary.violations) {
    broken.set(from, [...(broken.get(from) ?? []), rule.name]);
  }
  return broken;
}
