import createClient from 'openapi-fetch';
import { preferences } from '../preferences/preferences.js';
import { showWorkshop, shownDemo } from '../preferences/shown-workshop.js';
import { noteAnswer, noteSilence } from './connection.js';
import { heardFrom } from './server-time.js';
import type { components, paths } from './schema.js';

/** Names the demo that a request is about; `own`, or none, is about the maker's own workshop. */
export const WORKSHOP = 'Benchtide-Workshop';

export type Schemas = components['schemas'];
export type Problem = Schemas['Problem'];

/** The API of this very origin, typed by its own description. The session's cookie goes along by itself. */
export const api = createClient<paths>({ baseUrl: location.origin });
api.use({
  onRequest({ request }) {
    const demo = shownDemo();
    if (demo !== null && !request.headers.has(WORKSHOP)) request.headers.set(WORKSHOP, demo);
    const { language, units } = preferences();
    request.headers.set('Accept-Language', language);
    if (units === 'us') request.headers.set('Prefer', 'units=us');
  },
  onResponse({ request, response }) {
    const demo = shownDemo();
    // Thrown away on another device, or this browser has signed in elsewhere.
    if (response.status === 410 && demo !== null && request.headers.get(WORKSHOP) === demo)
      showWorkshop(null);
    heardFrom(response);
    noteAnswer(response);
  },
  onError({ error }) {
    // A question that nobody waits for any more says nothing about the connection.
    if (!(error instanceof DOMException && error.name === 'AbortError')) noteSilence();
  },
});

/** An answer that is no success: what the API has to say about it. */
export class ApiError extends Error {
  override readonly name = 'ApiError';

  constructor(
    readonly status: number,
    readonly problem: Problem | undefined,
  ) {
    super(problem?.detail ?? problem?.title ?? `status ${String(status)}`);
  }
}

/** The data of an answer. @throws ApiError where the API refused; TypeError where it was not reached */
export async function answered<T>(
  call: Promise<{ readonly data?: T; readonly error?: unknown; readonly response: Response }>,
): Promise<T> {
  const { data, error, response } = await call;
  if (!response.ok) throw new ApiError(response.status, error as Problem | undefined);
  return data as T;
}
