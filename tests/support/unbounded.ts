/** A JSON Schema (2020-12), of which the check reads what can bound a value. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** The largest number that is a bound and not just the end of what a double can count. */
const LARGEST = 1e15;

/** Years that no workshop is at work in; each text is one that a date or an instant of another year could be. */
const OTHER_AGES = ['0001', '1999', '2200', '9999'].flatMap((year) => [
  `${year}-01-01`,
  `${year}-01-01T00:00`,
  `${year}-01-01T00:00:00Z`,
]);

/**
 * Every place of a schema at which a value may be as large, long, deep or far away as one likes: numbers without a least
 * and a most, texts and lists without a most, records whose names or number have none, dates of any year, and schemas
 * that contain themselves or say nothing at all.
 * @param definitions what `$ref` refers to, by the last step of the reference
 * @returns a line for each, with the way to it
 */
export function unboundedIn(
  schema: JsonSchema,
  definitions: Readonly<Record<string, JsonSchema>>,
  where = '',
  above: readonly string[] = [],
): string[] {
  const ref = schema['$ref'];
  if (typeof ref === 'string') {
    const name = ref.split('/').at(-1) ?? '';
    const target = definitions[name];
    if (above.includes(name)) return [`${where}: contains itself by ${name}`];
    if (target === undefined) return [`${where}: refers to nothing, ${ref}`];
    return unboundedIn(target, definitions, where, [...above, name]);
  }
  const inner = (each: unknown, step: string): string[] =>
    unboundedIn(each as JsonSchema, definitions, `${where}${step}`, above);
  const choices = (schema['anyOf'] ?? schema['oneOf']) as readonly JsonSchema[] | undefined;
  if (choices !== undefined) return choices.flatMap((each, i) => inner(each, `|${String(i)}`));
  if ('const' in schema || 'enum' in schema) return [];
  switch (schema['type']) {
    case 'boolean':
    case 'null':
      return [];
    case 'number':
    case 'integer':
      return numberFaults(schema, where);
    case 'string':
      return textFaults(schema, where);
    case 'array':
      return [
        ...(typeof schema['maxItems'] === 'number' ? [] : [`${where}: a list without maxItems`]),
        ...inner(schema['items'] ?? {}, '[]'),
      ];
    case 'object':
      return objectFaults(schema, where, inner);
    default:
      return [`${where}: anything at all`];
  }
}

function numberFaults(schema: JsonSchema, where: string): string[] {
  const least = schema['minimum'] ?? schema['exclusiveMinimum'];
  const most = schema['maximum'] ?? schema['exclusiveMaximum'];
  return [
    ...(typeof least === 'number' && least >= -LARGEST ? [] : [`${where}: a number without a least`]),
    ...(typeof most === 'number' && most <= LARGEST ? [] : [`${where}: a number without a most`]),
  ];
}

function textFaults(schema: JsonSchema, where: string): string[] {
  const patterns = [schema, ...((schema['allOf'] ?? []) as JsonSchema[])].flatMap(({ pattern }) =>
    typeof pattern === 'string' ? [new RegExp(pattern, 'u')] : [],
  );
  const ofAnyAge = OTHER_AGES.filter((text) => patterns.every((pattern) => pattern.test(text)));
  const isDate = patterns.some((pattern) =>
    ['2026-01-01', '2026-01-01T00:00', '2026-01-01T00:00:00Z'].some((t) => pattern.test(t)),
  );
  return [
    ...(typeof schema['maxLength'] === 'number' || patterns.some(isOfBoundedLength)
      ? []
      : [`${where}: a text without maxLength`]),
    ...(isDate && ofAnyAge.length > 0 ? [`${where}: a date of any age, such as ${ofAnyAge[0] ?? ''}`] : []),
  ];
}

/** Whether all texts that a pattern takes have a longest: it holds from end to end and repeats nothing without limit. */
function isOfBoundedLength({ source }: RegExp): boolean {
  if (!source.startsWith('^') || !source.endsWith('$')) return false;
  const bare = source.replace(/\\./g, 'x').replace(/\[[^\]]*\]/g, 'x');
  return !/[*+]|\{\d+,\}/.test(bare);
}

function objectFaults(
  schema: JsonSchema,
  where: string,
  inner: (each: unknown, step: string) => string[],
): string[] {
  const properties = Object.entries((schema['properties'] ?? {}) as Record<string, unknown>);
  const more = schema['additionalProperties'];
  const faults = properties.flatMap(([name, each]) => inner(each, `.${name}`));
  if (more === false) return faults;
  return [
    ...faults,
    ...(typeof schema['maxProperties'] === 'number' ? [] : [`${where}: a record without maxProperties`]),
    ...inner(schema['propertyNames'] ?? {}, '{name}'),
    ...inner(more ?? {}, '{}'),
  ];
}
