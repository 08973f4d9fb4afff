import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { PrismaPg } from '@prisma/adapter-pg';
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlQuery,
  type SqlResultSet,
} from '@prisma/driver-adapter-utils';
import type * as Engine from '@prisma/schema-engine-wasm/schema_engine_bg';
import pg from 'pg';

/** Prisma's schema engine, connected to a scratch database. */
export interface SchemaEngine {
  /** How the database differs from schema.prisma, for people. */
  drift(): Promise<string>;
  /** What the engine thinks of the migrations applied so far. */
  history(migrationsFolder: string): Promise<Engine.DiagnoseMigrationHistoryOutput>;
  close(): Promise<void>;
}

const PRISMA = join(import.meta.dirname, '..', '..', 'prisma');
const filters = { externalTables: [], externalEnums: [] };
/** The type "char" in the catalogue (pg_type), which the adapter cannot read, and text, which it can. */
const CHAR_OID = 18;
const TEXT_OID = 25;

export async function schemaEngine(databaseUrl: string): Promise<SchemaEngine> {
  const pool = new pg.Pool({ connectionString: databaseUrl });
  const factory = new PrismaPg(pool);
  const connect = factory.connect.bind(factory);
  factory.connect = async () => readingChars(await connect());

  const schema = {
    path: join(PRISMA, 'schema.prisma'),
    content: readFileSync(join(PRISMA, 'schema.prisma'), 'utf8'),
  };
  const { SchemaEngine: Constructor } = await loadEngine();
  const engine = await Constructor.new(
    { datamodels: [[schema.path, schema.content]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
  return {
    async drift() {
      const { stdout } = await engine.diff({
        from: { tag: 'schemaDatasource', files: [schema], configDir: PRISMA },
        to: { tag: 'schemaDatamodel', files: [schema] },
        script: false,
        exitCode: true,
        filters,
      });
      return (stdout ?? '').trim();
    },
    history: (folder) =>
      // Without a shadow database: the adapter's would be the database itself.
      engine.diagnoseMigrationHistory({
        migrationsList: readList(folder),
        optInToShadowDatabase: false,
        filters,
      }),
    close: () => pool.end(),
  };
}

let loaded: Promise<typeof Engine> | undefined;

/** Once only: its bindings keep views of the memory of the first instance. */
function loadEngine(): Promise<typeof Engine> {
  loaded ??= instantiateEngine();
  return loaded;
}

/** The package's own entry imports the .wasm as a module, which Node does not do unasked. */
async function instantiateEngine(): Promise<typeof Engine> {
  const entry = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm');
  const bindings = (await import('@prisma/schema-engine-wasm/schema_engine_bg')) as typeof Engine & {
    __wbg_set_wasm: (exports: unknown) => void;
  };
  const loader = (globalThis as unknown as { WebAssembly: WasmLoader }).WebAssembly;
  const { instance } = await loader.instantiate(readFileSync(join(dirname(entry), 'schema_engine_bg.wasm')), {
    './schema_engine_bg.js': bindings,
  });
  bindings.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
  return bindings;
}

/** Declared here because the compiler knows it only together with everything of the browser. */
interface WasmLoader {
  instantiate: (
    bytes: Uint8Array,
    imports: Record<string, unknown>,
  ) => Promise<{ instance: { exports: { __wbindgen_start(): void } } }>;
}

interface WithIo extends SqlDriverAdapter {
  performIO(query: SqlQuery): Promise<{ fields: { dataTypeID: number }[] }>;
}

function readingChars<Adapter extends SqlDriverAdapter>(adapter: Adapter): Adapter {
  const patched = adapter as unknown as WithIo;
  const performIO = patched.performIO.bind(adapter);
  const queryRaw = adapter.queryRaw.bind(adapter);
  adapter.queryRaw = async (query): Promise<SqlResultSet> => {
    let chars: boolean[] = [];
    patched.performIO = async (asked) => {
      const result = await performIO(asked);
      chars = result.fields.map((field) => field.dataTypeID === CHAR_OID);
      for (const field of result.fields) if (field.dataTypeID === CHAR_OID) field.dataTypeID = TEXT_OID;
      return result;
    };
    const result = await queryRaw(query);
    const columnTypes = result.columnTypes.map((type, i) => (chars[i] ? ColumnTypeEnum.Character : type));
    return { ...result, columnTypes };
  };
  return adapter;
}

function readList(folder: string): Engine.MigrationList {
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();
  return {
    baseDir: folder,
    lockfile: {
      path: 'migration_lock.toml',
      content: readFileSync(join(folder, 'migration_lock.toml'), 'utf8'),
    },
    shadowDbInitScript: '',
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(join(folder, name, 'migration.sql'), 'utf8') },
      },
    })),
  };
}
