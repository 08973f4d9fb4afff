/**
 * Writes the Prisma client to libs/storage/generated. The prisma command would do the same, but it fetches an
 * engine from the network first and weighs 150 MB. CommonJS because the packages it calls do not load as ESM.
 */
const { readdirSync, rmSync, statSync } = require('node:fs');
const { join } = require('node:path');

const schemaPath = join(__dirname, 'schema.prisma');
const output = join(__dirname, '..', 'libs', 'storage', 'generated');

/** Oldest generated file against newest input: an interrupted generation must not pass for a finished one. */
function isUpToDate() {
  try {
    const written = readdirSync(output, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => statSync(join(entry.parentPath ?? entry.path, entry.name)).mtimeMs);
    const inputs = [schemaPath, __filename, require.resolve('@prisma/client-generator-ts')];
    const newest = Math.max(...inputs.map((path) => statSync(path).mtimeMs));
    return written.length > 0 && Math.min(...written) > newest;
  } catch {
    return false;
  }
}

async function generate() {
  if (isUpToDate()) return;
  const { getGenerators, loadSchemaContext } = require('@prisma/internals');
  const { PrismaClientTsGenerator } = require('@prisma/client-generator-ts');
  const generators = await getGenerators({
    schemaContext: await loadSchemaContext({
      schemaPath: { cliProvidedPath: schemaPath },
      printLoadMessage: false,
    }),
    registry: { 'prisma-client': { type: 'in-process', generator: new PrismaClientTsGenerator() } },
    cliCommand: 'generate',
  });
  // A model that was removed would leave its file behind, older than the schema for ever.
  rmSync(output, { recursive: true, force: true });
  for (const generator of generators) {
    await generator.generate();
    generator.stop();
  }
}

generate().catch((error) => {
  console.error(error);
  process.exitCode = 1;
});
