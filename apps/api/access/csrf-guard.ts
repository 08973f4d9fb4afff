import type { Request } from 'express';
import { ApiProblem } from '../problems/api-problem.js';

/** Methods that change nothing (RFC 9110, section 9.2.1). */
const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses a change that a page of another site makes through the maker's browser. The browser says where a request
 * comes from (Fetch Metadata); where it does not, as over plain HTTP to another machine, its `Origin` must be ours.
 * Programs that are no browser send neither.
 * @throws ApiProblem 403
 */
export function csrfGuard({ method, headers }: Request): void {
  if (SAFE.has(method)) return;
  const site = headers['sec-fetch-site'];
  const own =
    site === undefined
      ? headers.origin === undefined || hostOf(headers.origin) === headers.host
      : site === 'same-origin' || site === 'none';
  if (own) return;
  throw new ApiProblem(403, 'other-site', { says: 'other-site' });
}

function hostOf(origin: string): string | undefined {
  return URL.canParse(origin) ? new URL(origin).host : undefined;
}
