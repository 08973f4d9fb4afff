import type { StandardSchemaConversionResult } from '@nestjs/swagger';
import { z } from 'zod';

type JsonSchema = Record<string, unknown>;
const REF = '#/$defs/';

/**
 * Turns a schema of the contract into OpenAPI 3.1, which takes JSON Schema 2020-12 as it is. Schemas with an id become
 * components. Where defaults make what is sent differ from what is answered, the component of what is sent is a second
 * one, with `Input` after its name.
 */
export function convertSchema(
  schema: unknown,
  { schemaType }: { schemaType: 'input' | 'output' },
): StandardSchemaConversionResult | undefined {
  if (!(schema instanceof z.ZodType)) return undefined;
  const wanted = componentsOf(schema, schemaType);
  const other = componentsOf(schema, 'output');
  const name = (id: string): string =>
    schemaType === 'input' && closure(id, wanted.defs) !== closure(id, other.defs) ? `${id}Input` : id;
  const renamed = (value: unknown): unknown =>
    JSON.parse(JSON.stringify(value), (property, inner: unknown) =>
      property === '$ref' && typeof inner === 'string' && inner.startsWith(REF)
        ? `#/components/schemas/${name(inner.slice(REF.length))}`
        : inner,
    );
  return {
    schema: renamed(wanted.root),
    components: Object.fromEntries(Object.entries(wanted.defs).map(([id, def]) => [name(id), renamed(def)])),
  };
}

function componentsOf(
  schema: z.ZodType,
  io: 'input' | 'output',
): { root: JsonSchema; defs: Record<string, JsonSchema> } {
  const { $schema, $defs = {}, ...root } = z.toJSONSchema(schema, { io, unrepresentable: 'any' });
  const defs = Object.fromEntries(
    Object.entries($defs).map(([id, def]) => [id, withoutId(def as JsonSchema)]),
  );
  const { id } = root;
  if (typeof id !== 'string') return { root, defs };
  return { root: { $ref: `${REF}${id}` }, defs: { ...defs, [id]: withoutId(root) } };
}

function withoutId({ id: _, ...rest }: JsonSchema): JsonSchema {
  return rest;
}

/** A component with all that it refers to, as text. */
function closure(id: string, defs: Readonly<Record<string, JsonSchema>>): string {
  const seen = new Set([id]);
  for (const each of seen) {
    const text = JSON.stringify(defs[each] ?? null);
    for (const [, next] of text.matchAll(/"\$ref":"#\/\$defs\/([^"]+)"/g))
      if (next !== undefined) seen.add(next);
  }
  return [...seen].map((each) => `${each}:${JSON.stringify(defs[each] ?? null)}`).join('\n');
}
