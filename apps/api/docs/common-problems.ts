import type { OpenAPIObject } from '@nestjs/swagger';
import { WITH_BODY } from '../bodies/read-body.js';
import { problemResponse } from './problem-response.js';

type Paths = OpenAPIObject['paths'];
type Operation = NonNullable<Paths[string]['get']>;

/** Methods of which a request can change something, and so must not come from a page of another site. */
const CHANGING = new Set(['POST', 'PUT', 'PATCH', 'DELETE']);

/**
 * Adds to every operation the problems that no route decides about, as they are found before it is asked: a request that
 * cannot be read, is too large, or is no JSON; another site's page, a host name that is not ours, a database that is away
 * or has no room left.
 */
export function withCommonProblems(paths: Paths): Paths {
  for (const [path, item] of Object.entries(paths)) {
    for (const [method, operation] of Object.entries(item) as [string, Operation][]) {
      for (const status of commonTo(method.toUpperCase(), path)) {
        operation.responses[String(status)] ??= problemResponse(status);
      }
    }
  }
  return paths;
}

function commonTo(method: string, path: string): number[] {
  return [
    ...(WITH_BODY.has(method) || path.includes('{') ? [400] : []),
    ...(WITH_BODY.has(method) ? [413, 415] : []),
    ...(CHANGING.has(method) ? [403] : []),
    // Reading writes too: what a run teaches is kept when it is first asked for. Health asks for none of it.
    ...(path === '/api/health' ? [] : [507]),
    ...[421, 503],
  ];
}
