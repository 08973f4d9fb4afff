import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { Response } from 'express';
import { guardedHeaders, knownHosts } from './access/known-hosts.js';
import { AppModule } from './app.module.js';
import { apiDocument } from './docs/api-document.js';
import type { Parts } from './parts.js';

/** The HTTP server over the parts, not listening yet. @param bind address it will listen on */
export async function createApp(parts: Parts, bind: string): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule.over(parts), {
    abortOnError: false,
    bodyParser: false,
    logger: false,
  });
  app.disable('x-powered-by');
  app.setGlobalPrefix('api');
  app.use(guardedHeaders);
  app.use(knownHosts(bind));
  app.useBodyParser('json', { limit: '1mb', strict: true });
  const document = apiDocument(app, parts.version);
  app.use('/api/docs', (_request: unknown, response: Response) => response.json(document));
  await app.init();
  return app;
}
