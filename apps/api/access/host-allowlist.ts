import { isIPv4 } from 'node:net';
import type { NextFunction, Request, Response } from 'express';
import { ApiProblem } from '../problems/api-problem.js';

const LOOPBACK = new Set(['localhost', '[::1]', '::1']);

/** Whether an address to bind to is reachable from this machine only: 127.0.0.0/8 or ::1 (RFC 6890), or their name. */
export function isLoopback(address: string): boolean {
  return LOOPBACK.has(address) || (isIPv4(address) && address.startsWith('127.'));
}

/**
 * Refuses requests made under any name but this machine's own while bound to loopback: a page elsewhere could
 * otherwise point its own host name at 127.0.0.1 and read the bench through the maker's browser.
 */
export function hostAllowlist(bind: string) {
  return (request: Request, _response: Response, next: NextFunction): void => {
    // Names of hosts are the same in any case (RFC 9110, section 4.2.3).
    const host = (request.headers.host ?? '').replace(/:\d+$/, '').toLowerCase();
    const known = !isLoopback(bind) || isLoopback(host);
    next(known ? undefined : new ApiProblem(421, 'unknown-host', { says: 'unknown-host' }));
  };
}

/** Headers for answers that are data, not pages, and are nobody else's. */
export function guardedHeaders(_request: Request, response: Response, next: NextFunction): void {
  response.setHeader('Cache-Control', 'no-store');
  response.setHeader('Content-Security-Policy', "default-src 'none'; frame-ancestors 'none'");
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  next();
}
