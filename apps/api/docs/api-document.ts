import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { z } from 'zod';
import { problem } from '#contract';
import { convertSchema } from './schema-converter.js';

/** The OpenAPI 3.1 description of every route, from the same schemas that check what is sent. */
export function apiDocument(app: INestApplication, version: string): OpenAPIObject {
  const config = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Benchtide')
    .setDescription('Plans multi-day runs of decorated cold-process soap.')
    .setVersion(version)
    .addSecurity('key', {
      type: 'http',
      scheme: 'bearer',
      description: 'The access key printed at the start',
    })
    .build();
  const document = SwaggerModule.createDocument(app, config, { standardSchemaConverter: convertSchema });
  const { $schema: _dialect, ...schema } = z.toJSONSchema(problem, { target: 'draft-2020-12' });
  document.components ??= {};
  document.components.schemas = { ...document.components.schemas, Problem: schema as never };
  return document;
}
