import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { problem } from '#contract';
import { KEY_COOKIE } from '../access/key-cookie.js';
import { withCommonProblems } from './common-problems.js';
import { convertSchema } from './schema-converter.js';

type SchemaTable = NonNullable<NonNullable<OpenAPIObject['components']>['schemas']>;

/** The OpenAPI 3.1 description of every route, from the same schemas that check what is sent. */
export function apiDocument(app: INestApplication, version: string): OpenAPIObject {
  const config = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Benchtide')
    .setDescription(
      'Plans multi-day runs of decorated cold-process soap. Requests are about the workshop of their key; with the header `Benchtide-Workshop` and the id of its demo, about that.',
    )
    .setVersion(version)
    .addSecurity('key', {
      type: 'http',
      scheme: 'bearer',
      description: 'The access key printed at the start',
    })
    .addSecurity('cookie', {
      type: 'apiKey',
      in: 'cookie',
      name: KEY_COOKIE,
      description:
        'A browser that signed in (the port follows the name where the address has one); changes asked for by pages of other sites are refused with 403',
    })
    .build();
  const document = SwaggerModule.createDocument(app, config, { standardSchemaConverter: convertSchema });
  withCommonProblems(document.paths);
  const { components } = convertSchema(problem, { schemaType: 'output' }) ?? {};
  document.components ??= {};
  document.components.schemas = { ...document.components.schemas, ...(components as SchemaTable) };
  return document;
}
