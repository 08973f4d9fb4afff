/** What *Now*, a run, the bench sheet, the stock and the list of what to buy are made of; everything else needs a connection. */
const copied = [
  /^\/api\/runs$/,
  /^\/api\/runs\/[^/]+$/,
  /^\/api\/runs\/[^/]+\/(plan|plans|tide-table|odds|amounts|clocks|log|remedies)$/,
  /^\/api\/workshop$/,
  /^\/api\/designs$/,
  /^\/api\/moulds$/,
  /^\/api\/lots$/,
  /^\/api\/stock$/,
  /^\/api\/gather$/,
];

/** How the service worker answers a request. */
export type Manner =
  /** Not its business. */
  | 'leave'
  /** The page itself: from the network, else the copy that came with the build. */
  | 'page'
  /** A file whose name changes with its content: the copy if there is one. */
  | 'asset'
  /** From the network, with a copy kept for when there is none. */
  | 'fresh-or-copy'
  /** Who signs out leaves no copies behind. */
  | 'sign-out';

/** @param mode of the request: `navigate` for a page */
export function mannerOf(request: {
  readonly method: string;
  readonly url: string;
  readonly mode: string;
  readonly origin: string;
}): Manner {
  const { origin, pathname } = new URL(request.url);
  if (origin !== request.origin) return 'leave';
  if (pathname === '/api/session' && request.method === 'DELETE') return 'sign-out';
  if (request.method !== 'GET') return 'leave';
  if (pathname.startsWith('/api/')) {
    return copied.some((pattern) => pattern.test(pathname)) ? 'fresh-or-copy' : 'leave';
  }
  if (request.mode === 'navigate') return 'page';
  return 'asset';
}
