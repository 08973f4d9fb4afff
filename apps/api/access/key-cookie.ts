import type { Request, Response } from 'express';

/** Name of the cookie that holds a browser's access key; after it stands the port, where the address names one. */
export const KEY_COOKIE = 'benchtide-key';

const YEAR_MS = 365 * 24 * 60 * 60_000;
const attributes = { httpOnly: true, sameSite: 'strict', path: '/api' } as const;

/** Lets the browser bring its key from now on; its pages cannot read it. */
export function setKeyCookie(request: Request, response: Response, key: string): void {
  response.cookie(nameFor(request), key, { ...attributes, maxAge: YEAR_MS, secure: isOverTls(request) });
}

export function clearKeyCookie(request: Request, response: Response): void {
  response.clearCookie(nameFor(request), { ...attributes, secure: isOverTls(request) });
}

/** The key in the cookies of a request (RFC 6265, section 4.2.1: `name=value` pairs between semicolons). */
export function keyInCookie(request: Request): string | undefined {
  const pairs = (request.headers.cookie ?? '').split(';').map((pair) => pair.trim());
  const valueOf = (name: string): string | undefined =>
    pairs.find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1);
  // Without the port it was set by a release that did not know of neighbours.
  return valueOf(nameFor(request)) ?? valueOf(KEY_COOKIE);
}

/**
 * Browsers keep the cookies of a host together whatever the port (RFC 6265, section 8.5), so that two programs on one
 * machine would sign each other's browsers out.
 */
function nameFor({ headers }: Request): string {
  const port = /:(\d{1,5})$/.exec(headers.host ?? '')?.[1];
  return port === undefined ? KEY_COOKIE : `${KEY_COOKIE}-${port}`;
}

/** A proxy that ends TLS before us is not believed in what it adds, but the browser names the page it shows. */
function isOverTls(request: Request): boolean {
  return request.secure || request.headers.origin?.startsWith('https://') === true;
}
