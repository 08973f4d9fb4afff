import { json, type NextFunction, type Request, type RequestHandler, type Response } from 'express';
import { ApiProblem } from '../problems/api-problem.js';

const kB = 1024;

/** Most that is read of a body, in bytes, by the beginning of the path; the first that fits counts. */
const LIMITS: readonly (readonly [path: RegExp, bytes: number])[] = [
  // Sent by those who have no key yet.
  [/^\/api\/session(\/|$)/, 2 * kB],
  // Whole run files.
  [/^\/api\/[a-z]+-preview$/, 1024 * kB],
  // A photo in base64.
  [/^\/api\/runs\/[^/]+\/photos$/, 2048 * kB],
  // All hours, equipment and materials of a workshop.
  [/^\/api\/workshop$/, 512 * kB],
  [/^/, 256 * kB],
];

/** Methods of which a body is read; what others bring is not looked at. */
export const WITH_BODY: ReadonlySet<string> = new Set(['POST', 'PUT', 'PATCH']);

/**
 * Reads bodies in JSON, no more of each than its route can have use for.
 * @throws ApiProblem 415 for a body that says it is anything else; 400 and 413 come from the reader itself
 */
export function readBody(): RequestHandler {
  const readers = LIMITS.map(([path, limit]) => [path, json({ limit, strict: true })] as const);
  return (request: Request, response: Response, next: NextFunction): void => {
    if (!WITH_BODY.has(request.method)) {
      next();
      return;
    }
    // `false`: there is a body, and it is no JSON; null: there is no body. One of length 0 is none either.
    if (request.is('application/json') === false && request.headers['content-length'] !== '0') {
      next(new ApiProblem(415, 'unsupported-media-type', { says: 'not-json' }));
      return;
    }
    const path = request.path.toLowerCase();
    const [, read] = readers.find(([of]) => of.test(path)) ?? [];
    read?.(request, response, next);
  };
}
