/// <reference lib="webworker" />
import { KEPT_AT } from '../api/kept-at.js';
import { mannerOf } from './copies.js';

declare const self: ServiceWorkerGlobalScope;
/** Paths of the build's files, the page among them, and a name that changes with them. Set by the build. */
declare const SHELL: { readonly version: string; readonly files: readonly string[] };

const shell = SHELL;
const PAGE = '/index.html';
const shellCache = `benchtide-shell-${shell.version}`;
const copiesCache = 'benchtide-copies';
/** A page that takes longer than this to come is better shown from its copy. */
const PATIENCE_MS = 3_000;
/** The same for data; planning may keep the API busy for a while. */
const DATA_PATIENCE_MS = 8_000;

// A newer one waits until the pages that run on the files of this one are closed.
self.addEventListener('install', (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(shellCache);
      await cache.addAll(shell.files.map((path) => new Request(path, { cache: 'no-cache' })));
    })(),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      const old = (await caches.keys()).filter((name) => name !== shellCache && name !== copiesCache);
      await Promise.all(old.map((name) => caches.delete(name)));
      await self.clients.claim();
    })(),
  );
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { method, url, mode } = request;
  switch (mannerOf({ method, url, mode, origin: self.location.origin })) {
    case 'page':
      event.respondWith(page(request));
      break;
    case 'asset':
      event.respondWith(asset(request));
      break;
    case 'fresh-or-copy':
      event.respondWith(freshOrCopy(event));
      break;
    case 'sign-out':
      event.respondWith(signOut(request));
      break;
    case 'leave':
      break;
  }
});

async function page(request: Request): Promise<Response> {
  const copy = await caches.match(PAGE);
  if (copy === undefined) return fetch(request);
  return (await inTime(fetch(request), PATIENCE_MS)) ?? copy;
}

async function asset(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? fetch(request);
}

async function freshOrCopy(event: FetchEvent): Promise<Response> {
  const { request } = event;
  const name = copyName(request);
  const cache = await caches.open(copiesCache);
  const fresh = fetch(request).then(async (response) => {
    if (response.ok) await cache.put(name, await asCopy(response.clone()));
    // A key that was revoked opens nothing any more, copies included.
    if (response.status === 401) await caches.delete(copiesCache);
    return response;
  });
  const copy = await cache.match(name);
  if (copy === undefined) return fresh;
  // What comes too late for this page is in time for the next one.
  event.waitUntil(fresh.catch(() => undefined));
  return (await inTime(fresh, DATA_PATIENCE_MS)) ?? copy;
}

/** The demo answers at the same addresses as the maker's own workshop. */
function copyName({ url, headers }: Request): string {
  const named = new URL(url);
  const demo = headers.get('Benchtide-Workshop');
  if (demo !== null) named.searchParams.set('workshop', demo);
  return named.href;
}

/** The `Date` of a copy would put the server's clock back. */
async function asCopy(response: Response): Promise<Response> {
  const headers = new Headers(response.headers);
  headers.delete('date');
  headers.delete('content-encoding');
  headers.set(KEPT_AT, new Date().toISOString());
  return new Response(await response.blob(), { status: response.status, headers });
}

async function signOut(request: Request): Promise<Response> {
  const response = await fetch(request);
  if (response.ok) await caches.delete(copiesCache);
  return response;
}

/** @returns undefined where it failed or took too long */
async function inTime(answer: Promise<Response>, ms: number): Promise<Response | undefined> {
  const late = new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), ms));
  return Promise.race([answer.catch(() => undefined), late]);
}
