import type { NextFunction, Request, Response } from 'express';
import { ApiProblem } from '../problems/api-problem.js';

const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]', '::1']);

/** Whether an address to bind to is reachable from this machine only. */
export function isLoopback(address: string): boolean {
  return LOOPBACK.has(address) || /^127(\.\d{1,3}){3}$/.test(address);
}

/**
 * Refuses requests made under any name but this machine's own while bound to loopback: a page elsewhere could
 * otherwise point its own host name at 127.0.0.1 and read the bench through the maker's browser.
 */
export function knownHosts(bind: string) {
  return (request: Request, _response: Response, next: NextFunction): void => {
    // Names of hosts are the same in any case (RFC 9110, section 4.2.3).
    const host = (request.headers.host ?? '').replace(/:\d+$/, '').toLowerCase();
    const known = !isLoopback(bind) || isLoopback(host);
    next(
      known ? undefined : new ApiProblem(421, 'unknown-host', 'This machine does not go by that name here'),
    );
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
