import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import type { JsonSchema } from '../support/unbounded.js';

interface Content {
  readonly content?: Readonly<Record<string, { readonly schema?: JsonSchema }>>;
}

interface Described {
  readonly parameters?: readonly {
    readonly name: string;
    readonly in: string;
    readonly schema: JsonSchema;
  }[];
  readonly requestBody?: Content;
  readonly responses: Readonly<Record<string, Content>>;
}

/** The OpenAPI document as the program itself answers it. */
export interface ApiDescription {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Described>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, JsonSchema>> };
}

/** One route with what it takes and how what it answers is checked. */
export interface Operation {
  readonly method: string;
  readonly path: string;
  /** `POST /api/runs/{id}/log` */
  readonly name: string;
  readonly query: readonly { readonly name: string; readonly schema: JsonSchema }[];
  readonly body: JsonSchema | undefined;
  /** @returns what is wrong with an answer, undefined when it is as described */
  faultOf(status: number, contentType: string, body: string): string | undefined;
}

/** Every route of a description; none is left out, so that a new one is asked as soon as it is there. */
export function operationsOf({ paths, components }: ApiDescription): Operation[] {
  const ajv = new Ajv2020({ strict: false });
  addFormats.default(ajv);
  ajv.addSchema({ $id: 'api', components });
  const known = new Map<string, ReturnType<typeof ajv.compile>>();
  const validator = (schema: JsonSchema) => {
    const text = JSON.stringify(schema).replaceAll('"#/components/', '"api#/components/');
    const valid = known.get(text) ?? ajv.compile(JSON.parse(text) as object);
    known.set(text, valid);
    return valid;
  };
  return Object.entries(paths).flatMap(([path, item]) =>
    Object.entries(item).map(([lower, { parameters = [], requestBody, responses }]) => {
      const method = lower.toUpperCase();
      return {
        ...{ method, path, name: `${method} ${path}` },
        query: parameters.filter((each) => each.in === 'query'),
        body: requestBody?.content?.['application/json']?.schema,
        faultOf(status, contentType, body) {
          const described = responses[String(status)];
          if (described === undefined) return 'a status that is not described';
          const [type, { schema }] = Object.entries(described.content ?? {})[0] ?? ['', {}];
          if (type === '') return body === '' ? undefined : 'a body that is not described';
          if (!contentType.startsWith(type)) return `${contentType} instead of ${type}`;
          if (schema === undefined || type === 'text/event-stream') return undefined;
          const valid = validator(schema);
          if (valid(JSON.parse(body) as unknown)) return undefined;
          return `not what is described: ${ajv.errorsText(valid.errors).slice(0, 300)}`;
        },
      } satisfies Operation;
    }),
  );
}
