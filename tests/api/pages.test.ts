import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';

/** A web build in small, with compressed copies of one script. */
const PAGE = '<!doctype html><title>Small bench</title>';
const SCRIPT = `export const tide = 'in';\n`.repeat(60);
const folder = mkdtempSync(join(tmpdir(), 'benchtide-test-pages-'));
const files: Record<string, string | Buffer> = {
  'web/index.html': PAGE,
  'web/sw.js': 'self.skipWaiting();',
  'web/manifest.webmanifest': '{"name":"Small bench"}',
  'web/assets/main-a1b2c3.js': SCRIPT,
  'web/assets/main-a1b2c3.js.br': brotliCompressSync(SCRIPT),
  'web/assets/main-a1b2c3.js.gz': gzipSync(SCRIPT),
  'secret.txt': 'not for the web',
};
let bench: TestApi;

beforeAll(async () => {
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  bench = await openTestApi('2026-11-27T17:00:00Z', undefined, join(folder, 'web'));
});
afterAll(async () => {
  await bench.close();
  rmSync(folder, { recursive: true });
});

const BROWSER = 'text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8';

async function ask(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Response> {
  return fetch(`${bench.url}${path}`, { method, headers: { accept: BROWSER, ...headers } });
}

/** Sent as written: fetch would tidy the path up and unpack the answer. */
async function askRaw(
  path: string,
  headers: Record<string, string>,
): Promise<{ head: string; body: Buffer }> {
  return new Promise((resolve, reject) => {
    get(`${bench.url}/`, { path, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        resolve({
          head: `${String(response.statusCode)} ${response.headers['content-encoding'] ?? 'plain'}`,
          body: Buffer.concat(chunks),
        }),
      );
    }).on('error', reject);
  });
}

describe('the page', () => {
  it.each([
    '/',
    '/index.html',
    '/runs',
    '/runs/01890000-0000-7000-8000-000000000000/log?from=now',
    '/apiary',
  ])('answers at %s', async (path) => {
    const answer = await ask(path);
    expect([answer.status, await answer.text()]).toEqual([200, PAGE]);
    expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
  });

  /** Directives: Content Security Policy Level 3; the other headers: Fetch, Referrer Policy, Permissions Policy. */
  it('may run and load only what comes from here', async () => {
    for (const path of ['/', '/runs', '/sw.js', '/assets/main-a1b2c3.js']) {
      const { headers } = await ask(path);
      const policy = (headers.get('content-security-policy') ?? '').split('; ').sort();
      expect(policy).toEqual([
        "base-uri 'none'",
        "connect-src 'self'",
        "default-src 'none'",
        "font-src 'self'",
        "form-action 'self'",
        "frame-ancestors 'none'",
        "img-src 'self' data:",
        "manifest-src 'self'",
        "script-src 'self'",
        "style-src 'self'",
        "worker-src 'self'",
      ]);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('permissions-policy')).toContain('screen-wake-lock=(self)');
      expect(headers.get('permissions-policy')).toContain('camera=()');
    }
  });

  it('is asked for again with its tag, and not sent again', async () => {
    const tag = (await ask('/')).headers.get('etag') ?? '';
    expect(tag).not.toBe('');
    // Not through fetch, which asks for a fresh copy whenever it is given a tag.
    const again = await askRaw('/', { 'if-none-match': tag });
    expect([again.head, again.body.length]).toEqual(['304 plain', 0]);
  });

  it('is refused under another host name', async () => {
    const { head } = await askRaw('/', { host: 'elsewhere.example' });
    expect(head).toBe('421 plain');
    // RFC 9110, section 4.2.3: host names are the same in any case.
    expect((await askRaw('/', { host: 'LocalHost:4780' })).head).toMatch(/^200/);
  });
});

describe('its files', () => {
  it('are kept for a year when their name holds a hash, and looked at again when not', async () => {
    const script = await ask('/assets/main-a1b2c3.js');
    expect(script.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    const worker = await ask('/sw.js');
    expect(worker.headers.get('cache-control')).toBe('no-cache');
    expect(worker.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    const manifest = await ask('/manifest.webmanifest');
    expect(manifest.headers.get('content-type')).toMatch(/^application\/manifest\+json/);
  });

  it.each([
    ['gzip, deflate, br', '200 br', files['web/assets/main-a1b2c3.js.br']],
    ['gzip, br;q=0', '200 gzip', files['web/assets/main-a1b2c3.js.gz']],
    ['identity', '200 plain', Buffer.from(SCRIPT)],
  ])('are sent compressed as %s allows', async (accepted, head, body) => {
    const answer = await askRaw('/assets/main-a1b2c3.js', { 'accept-encoding': accepted });
    expect(answer.head).toBe(head);
    expect(answer.body.equals(body as Buffer)).toBe(true);
    const { headers } = await ask('/assets/main-a1b2c3.js', { 'accept-encoding': accepted });
    expect(headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect(headers.get('vary')).toBe('Accept-Encoding');
  });

  it('answer to HEAD without a body', async () => {
    const answer = await ask('/assets/main-a1b2c3.js', { 'accept-encoding': 'identity' }, 'HEAD');
    expect([answer.status, answer.headers.get('content-length')]).toEqual([200, String(SCRIPT.length)]);
    expect(await answer.text()).toBe('');
  });
});

describe('what is not there', () => {
  it.each([
    ['a file that does not exist', '/assets/main-000000.js', {}],
    ['a compressed copy by its own name', '/assets/main-a1b2c3.js.gz', {}],
    ['a place when no page is wanted', '/runs', { accept: 'application/json' }],
    ['anything below /api', '/api/teapots', {}],
    ['/api itself, however it is written', '/API', {}],
  ])('is a problem document: %s', async (_what, path, headers: Record<string, string>) => {
    const answer = await ask(path, { authorization: `Bearer ${bench.key}`, ...headers });
    expect(answer.status).toBe(404);
    expect(answer.headers.get('content-type')).toMatch(/^application\/problem\+json/);
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('content-security-policy')).toBe("default-src 'none'; frame-ancestors 'none'");
    expect(await answer.json()).toMatchObject({ type: 'urn:benchtide:problem:not-found', status: 404 });
  });

  it('is anything that is not asked for with GET', async () => {
    const answer = await ask('/', {}, 'POST');
    expect(answer.status).toBe(404);
  });

  it.each(['/../secret.txt', '/assets/../../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt'])(
    'is what lies outside the folder: %s',
    async (path) => {
      const { head, body } = await askRaw(path, { accept: '*/*' });
      expect(head).toBe('404 plain');
      expect(body.toString()).not.toContain('not for the web');
    },
  );
});

describe('without a web build', () => {
  it('the API works, and the rest is a problem document', async () => {
    const bare = await openTestApi('2026-11-27T17:00:00Z', undefined, join(folder, 'not-built'));
    expect((await bare.call('GET', '/api/runs')).status).toBe(200);
    expect((await bare.call('GET', '/', undefined, { accept: BROWSER })).status).toBe(404);
    await bare.close();
  });
});
