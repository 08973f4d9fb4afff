import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { Response } from 'express';
import { guardedHeaders, hostAllowlist } from './access/host-allowlist.js';
import { AppModule } from './app.module.js';
import { readBody } from './bodies/read-body.js';
import { apiDocument } from './docs/api-document.js';
import { onlyApiFromHere, servePages } from './pages/serve-pages.js';
import type { Services } from './services.js';

/** Where the server will be, and what it serves besides the API. */
export interface AppOptions {
  /** Address it will listen on. */
  readonly bind: string;
  /** Folder of the web build; absent or missing, there are no pages. */
  readonly pages?: string;
}

/** The routes over the parts: enough to describe them, not yet a server. */
export async function createRoutes(services: Services): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule.over(services), {
    abortOnError: false,
    bodyParser: false,
    logger: false,
  });
  app.setGlobalPrefix('api');
  return app;
}

/** The HTTP server over the parts, not listening yet. */
export async function createApp(
  services: Services,
  { bind, pages }: AppOptions,
): Promise<NestExpressApplication> {
  const app = await createRoutes(services);
  app.disable('x-powered-by');
  app.use(setDate(services.clock));
  app.use(guardedHeaders);
  app.use(hostAllowlist(bind));
  if (pages !== undefined) app.use(servePages(pages));
  app.use(onlyApiFromHere);
  app.use(readBody());
  const document = apiDocument(app, services.version);
  app.use('/api/docs', (_request: unknown, response: Response) => response.json(document));
  await app.init();
  return app;
}

/** Pages count down by this very clock, so that is the one told, not the machine's. */
function setDate(clock: Services['clock']) {
  return (_request: unknown, response: Response, next: () => void): void => {
    response.setHeader('Date', clock.now().toUTCString());
    next();
  };
}
