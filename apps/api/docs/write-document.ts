import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createRoutes } from '../create-app.js';
import type { Services } from '../services.js';
import { programVersion, projectFolder } from '../program/project-folder.js';
import { apiDocument } from './api-document.js';

/**
 * Run by the build: writes the OpenAPI document to dist/openapi.json, from which the types of the web app are made.
 * Only what decorators say is read, so the routes need no parts to work with.
 */
const app = await createRoutes({} as Services);
const document = apiDocument(app, programVersion());
const folder = join(projectFolder(), 'dist');
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'openapi.json'), `${JSON.stringify(document, null, 2)}\n`);
await app.close();
