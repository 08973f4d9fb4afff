import type { Request, Response } from 'express';

/** Name of the cookie that holds a browser's access key. */
export const KEY_COOKIE = 'benchtide-key';

const YEAR_MS = 365 * 24 * 60 * 60_000;
const attributes = { httpOnly: true, sameSite: 'strict', path: '/api' } as const;

/** Lets the browser bring its key from now on; its pages cannot read it. */
export function setKeyCookie(request: Request, response: Response, key: string): void {
  response.cookie(KEY_COOKIE, key, { ...attributes, maxAge: YEAR_MS, secure: isOverTls(request) });
}

export function clearKeyCookie(request: Request, response: Response): void {
  response.clearCookie(KEY_COOKIE, { ...attributes, secure: isOverTls(request) });
}

/** The key in the cookies of a request (RFC 6265, section 4.2.1: `name=value` pairs between semicolons). */
export function keyInCookie(request: Request): string | undefined {
  const pairs = (request.headers.cookie ?? '').split(';').map((pair) => pair.trim());
  const found = pairs.find((pair) => pair.startsWith(`${KEY_COOKIE}=`));
  return found?.slice(KEY_COOKIE.length + 1);
}

/** A proxy that ends TLS before us is not believed in what it adds, but the browser names the page it shows. */
function isOverTls(request: Request): boolean {
  return request.secure || request.headers.origin?.startsWith('https://') === true;
}
