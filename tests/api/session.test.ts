import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';
import { openBrowser, type Browser } from '../support/browser.js';

let bench: TestApi;
beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z');
});
afterAll(() => bench.close());
// Wrong tries of one test must not count in the next.
beforeEach(() => bench.clock.advance(2));

const makeCode = async (): Promise<string> => (await bench.storage.signInCodes.create(bench.workshopId)).code;

async function signedIn(device: string): Promise<Browser> {
  const browser = openBrowser(bench.url);
  const answer = await browser.call('POST', '/api/session', { code: await makeCode(), device });
  expect(answer.status).toBe(201);
  return browser;
}

function expectProblem(answer: Answer, status: number, slug: string): void {
  expect([answer.status, answer.body?.type]).toEqual([status, `urn:benchtide:problem:${slug}`]);
}

describe('a browser', () => {
  it('signs in by a code, says who it is, works, signs out, and is out', async () => {
    const browser = openBrowser(bench.url);
    expectProblem(await browser.call('GET', '/api/session'), 401, 'key-needed');
    const code = await makeCode();
    const made = await browser.call('POST', '/api/session', { code, device: 'Phone by the bowl' });
    expect(made.status).toBe(201);
    const { facts } = (await bench.storage.workshops.get(bench.workshopId))!;
    expect(made.body).toEqual({
      workshop: {
        ...{ id: bench.workshopId, title: facts.title, timeZone: facts.timeZone },
        ...{ isDemo: false, begun: true },
      },
      demo: null,
      key: { id: expect.any(String), label: 'Phone by the bowl', createdAt: bench.clock.now().toISOString() },
    });
    expect((await browser.call('GET', '/api/session')).body).toEqual(made.body);
    expect((await browser.call('GET', '/api/runs')).status).toBe(200);
    const mould = { key: 'cookie-mould', title: 'M', kind: 'silicone-cavity', cavityMl: 80, cavities: 12 };
    expect((await browser.call('POST', '/api/moulds', mould)).status).toBe(201);

    const taken = browser.headers();
    expect((await browser.call('DELETE', '/api/session')).status).toBe(204);
    expect(browser.cookie()).toBeUndefined();
    const late = await fetch(`${bench.url}/api/runs`, { headers: taken });
    expect(late.status).toBe(401);
  });

  it('signs in by the key too, and is called “browser” if it says nothing', async () => {
    const browser = openBrowser(bench.url);
    const answer = await browser.call('POST', '/api/session', { key: bench.key });
    expect([answer.status, answer.body.key.label]).toEqual([201, 'browser']);
    // A key of its own: signing out does not take the first one away.
    await browser.call('DELETE', '/api/session');
    expect((await bench.call('GET', '/api/runs')).status).toBe(200);
  });

  /** Attributes: RFC 6265 section 4.1.2 and its revision for SameSite. */
  it('keeps the key where no page can read it and no other site can send it', async () => {
    const browser = await signedIn('laptop');
    const [pair = '', ...attributes] = (browser.cookie() ?? '').split('; ');
    const [name = '', key = ''] = pair.split('=');
    expect(name).toBe(`benchtide-key-${new URL(bench.url).port}`);
    expect(key).toMatch(/^[\w-]{43}$/);
    expect(attributes.filter((each) => !each.startsWith('Expires=')).sort()).toEqual([
      'HttpOnly',
      'Max-Age=31536000',
      'Path=/api',
      'SameSite=Strict',
    ]);
    expect(JSON.stringify((await browser.call('GET', '/api/session')).body)).not.toContain(key);
  });

  /** Cookies do not go by port: RFC 6265, section 8.5. */
  it('stays signed in when another program on the same machine signs it in too', async () => {
    const browser = await signedIn('laptop');
    const { cookie = '' } = browser.headers();
    const port = Number(new URL(bench.url).port);
    const neighbour = `benchtide-key-${String(port - 1)}=${'x'.repeat(43)}`;
    const both = { cookie: `benchtide-key=${'y'.repeat(43)}; ${neighbour}; ${cookie}` };
    expect((await browser.call('GET', '/api/session', undefined, both)).status).toBe(200);
    const onlyTheirs = { cookie: neighbour };
    expectProblem(await browser.call('GET', '/api/session', undefined, onlyTheirs), 401, 'key-needed');
  });

  it('brings a key that an earlier release set without the port', async () => {
    const browser = await signedIn('laptop');
    const { cookie = '' } = browser.headers();
    const before = { cookie: cookie.replace(/-\d+=/, '=') };
    expect((await browser.call('GET', '/api/session', undefined, before)).status).toBe(200);
  });

  it('gets a cookie for TLS only when its page came over TLS; what a proxy adds is not believed', async () => {
    const secure = async (headers: Record<string, string>): Promise<boolean> => {
      const browser = openBrowser(bench.url);
      await browser.call('POST', '/api/session', { code: await makeCode() }, headers);
      return / Secure(;|$)/.test(browser.cookie() ?? '');
    };
    expect(await secure({ origin: 'https://bench.example' })).toBe(true);
    expect(await secure({ origin: bench.url })).toBe(false);
    expect(await secure({ 'x-forwarded-proto': 'https' })).toBe(false);
  });

  it('that signs in again stands in the list once', async () => {
    const browser = await signedIn('tablet, first');
    await browser.call('POST', '/api/session', { code: await makeCode(), device: 'tablet, again' });
    const { body } = await browser.call('GET', '/api/keys');
    expect(body.map((key: { label: string }) => key.label)).toContain('tablet, again');
    expect(body.map((key: { label: string }) => key.label)).not.toContain('tablet, first');
  });

  it('gets the inbox as a stream with its cookie alone, until its key is revoked', async () => {
    const browser = await signedIn('streaming');
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    try {
      const response = await fetch(`${bench.url}/api/inbox/stream`, { headers: browser.headers() });
      expect([response.status, response.headers.get('content-type')]).toEqual([200, 'text/event-stream']);
      const chunks = response.body!.getReader();
      const read = async (): Promise<string> => {
        const { value, done } = await chunks.read();
        return done ? 'end' : new TextDecoder().decode(value);
      };
      expect(await read()).toBe('retry: 2000\n\n');
      vi.advanceTimersByTime(25_000);
      expect(await read()).toBe(': still here\n\n');
      const { body } = await browser.call('GET', '/api/session');
      await bench.call('DELETE', `/api/keys/${body.key.id}`);
      vi.advanceTimersByTime(25_000);
      expect(await read()).toBe('end');
    } finally {
      vi.useRealTimers();
    }
  });
});

describe('a code', () => {
  it('lets one in, and nobody afterwards', async () => {
    const code = await makeCode();
    const answers = await Promise.all(
      [1, 2, 3, 4, 5].map(() => openBrowser(bench.url).call('POST', '/api/session', { code })),
    );
    expect(answers.map(({ status }) => status).sort((a, b) => a - b)).toEqual([201, 401, 401, 401, 401]);
    for (const answer of answers.filter(({ status }) => status === 401)) {
      expectProblem(answer, 401, 'wrong-code');
      expect(answer.headers.getSetCookie()).toEqual([]);
    }
  });

  it('runs out after a quarter of an hour', async () => {
    const [early, late] = [await makeCode(), await makeCode()];
    bench.clock.advance(14);
    expect((await openBrowser(bench.url).call('POST', '/api/session', { code: early })).status).toBe(201);
    bench.clock.advance(1);
    expectProblem(
      await openBrowser(bench.url).call('POST', '/api/session', { code: late }),
      401,
      'wrong-code',
    );
  });

  it('is made for another device by one that is signed in', async () => {
    const laptop = await signedIn('laptop');
    const { status, body } = await laptop.call('POST', '/api/session/codes');
    expect([status, body]).toEqual([
      201,
      {
        code: expect.stringMatching(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/),
        path: `/#sign-in=${body.code}`,
        // It listens on this machine alone.
        addresses: [],
        expiresAt: bench.clock.in(15).toISOString(),
      },
    ]);
    const phone = openBrowser(bench.url);
    expectProblem(await phone.call('POST', '/api/session/codes'), 401, 'key-needed');
    expect((await phone.call('POST', '/api/session', { code: body.code })).status).toBe(201);
  });

  it('cannot be guessed: ten wrong tries a minute, right ones do not count', async () => {
    const stranger = openBrowser(bench.url);
    for (let i = 0; i < 12; i += 1) await signedIn(`friend ${String(i)}`);
    for (let i = 0; i < 10; i += 1) {
      expectProblem(
        await stranger.call('POST', '/api/session', { code: `0000-000${String(i)}` }),
        401,
        'wrong-code',
      );
    }
    const right = await makeCode();
    const answer = await stranger.call('POST', '/api/session', { code: right });
    expectProblem(answer, 429, 'too-many-tries');
    expect(answer.headers.get('retry-after')).toBe('60');
    expectProblem(
      await stranger.call('POST', '/api/session', { key: 'x'.repeat(43) }),
      429,
      'too-many-tries',
    );
    expect((await bench.call('GET', '/api/runs')).status).toBe(200);
    bench.clock.advance(1);
    expect((await stranger.call('POST', '/api/session', { code: right })).status).toBe(201);
  });

  it.each([
    ['neither code nor key', {}, 'code'],
    ['both', { code: 'AAAA-AAAA', key: 'x'.repeat(43) }, 'code'],
    ['a device without a name', { code: 'AAAA-AAAA', device: ' ' }, 'device'],
    ['a device with a story', { code: 'AAAA-AAAA', device: 'x'.repeat(61) }, 'device'],
  ])('is not looked at when there is %s', async (_what, body, path) => {
    const answer = await openBrowser(bench.url).call('POST', '/api/session', body);
    expectProblem(answer, 422, 'invalid-input');
    expect(answer.body.issues).toMatchObject([{ path }]);
  });
});

/** Sec-Fetch-Site: W3C Fetch Metadata Request Headers, section 2.3; Origin: Fetch, section 3.2. */
describe('a page of another site', () => {
  const mould = { key: 'planted', title: 'M', kind: 'silicone-cavity', cavityMl: 80, cavities: 12 };

  it.each([
    ['cross-site', { 'sec-fetch-site': 'cross-site' }],
    ['same-site, as another port or a sibling host', { 'sec-fetch-site': 'same-site' }],
    ['of another origin', { 'sec-fetch-site': '', origin: 'http://127.0.0.1:1' }],
    ['of no origin that can be told', { 'sec-fetch-site': '', origin: 'null' }],
  ])('changes nothing through the maker’s browser: %s', async (_what, headers) => {
    const browser = await signedIn('hers');
    for (const [method, path, body] of [
      ['POST', '/api/moulds', mould],
      ['DELETE', '/api/session', undefined],
      ['POST', '/api/session/codes', undefined],
      ['POST', '/api/session', { code: await makeCode() }],
    ] as const) {
      const own = Object.fromEntries(
        Object.entries({ ...browser.headers(), ...headers }).filter(([, value]) => value !== ''),
      );
      const answer = await fetch(`${bench.url}${path}`, {
        method,
        headers: { ...own, 'content-type': 'application/json' },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      expect(answer.status, `${method} ${path}`).toBe(403);
      expect(await answer.json()).toMatchObject({ type: 'urn:benchtide:problem:other-site' });
    }
    expect((await browser.call('GET', '/api/session')).status).toBe(200);
    expect((await bench.call('GET', '/api/moulds')).body).not.toContainEqual(
      expect.objectContaining({ content: expect.objectContaining({ key: 'planted' }) }),
    );
  });

  it('of our own origin does, where the browser does not say which site asks', async () => {
    const browser = await signedIn('old browser');
    const { cookie = '' } = browser.headers();
    const headers = { cookie, origin: bench.url };
    const answer = await fetch(`${bench.url}/api/session/codes`, { method: 'POST', headers });
    expect(answer.status).toBe(201);
  });

  it('is no matter for programs that send their key themselves', async () => {
    const answer = await bench.call('POST', '/api/session/codes', undefined, {
      'sec-fetch-site': 'cross-site',
      origin: 'https://elsewhere.example',
    });
    expect(answer.status).toBe(201);
  });

  it('is not helped by a cookie when a wrong key is sent beside it', async () => {
    const browser = await signedIn('hers');
    const headers = { ...browser.headers(), authorization: `Bearer ${'x'.repeat(43)}` };
    expect((await fetch(`${bench.url}/api/runs`, { headers })).status).toBe(401);
  });
});

describe('the list of devices', () => {
  it('shows what is signed in and which one asks, and no secret', async () => {
    const phone = await signedIn('lost phone');
    const laptop = await signedIn('laptop on the sofa');
    const { body } = await laptop.call('GET', '/api/keys');
    const found = body.filter(({ label }: { label: string }) => /lost phone|sofa/.test(label));
    expect(found).toMatchObject([
      { label: 'lost phone', current: false },
      { label: 'laptop on the sofa', current: true },
    ]);
    expect(Object.keys(found[0]).sort()).toEqual(['createdAt', 'current', 'id', 'label', 'lastSeenAt']);

    expect((await laptop.call('DELETE', `/api/keys/${String(found[0].id)}`)).status).toBe(204);
    expectProblem(await phone.call('GET', '/api/session'), 401, 'key-needed');
    expect((await laptop.call('DELETE', `/api/keys/${String(found[0].id)}`)).status).toBe(204);
    const after = (await laptop.call('GET', '/api/keys')).body;
    expect(after.map(({ id }: { id: string }) => id)).not.toContain(found[0].id);
  });

  it('gives a device another name, and says when it was last seen, to ten minutes', async () => {
    const [laptop, phone] = [await signedIn('laptop'), await signedIn('Phone, Chrome')];
    const { key } = (await phone.call('GET', '/api/session')).body;
    const path = `/api/keys/${String(key.id)}`;
    const seen = async (): Promise<unknown> =>
      (await laptop.call('GET', '/api/keys')).body.find(({ id }: { id: string }) => id === key.id).lastSeenAt;
    const first = bench.clock.now().toISOString();
    expect(await seen()).toBe(first);
    bench.clock.advance(9);
    await phone.call('GET', '/api/runs');
    expect(await seen()).toBe(first);
    bench.clock.advance(2);
    await phone.call('GET', '/api/runs');
    expect(await seen()).toBe(bench.clock.now().toISOString());
    const renamed = await laptop.call('PATCH', path, { label: '  Phone by the bowl ' });
    expect([renamed.status, renamed.body.label, renamed.body.current]).toEqual([
      200,
      'Phone by the bowl',
      false,
    ]);
    for (const label of ['', ' ', 'x'.repeat(61)])
      expectProblem(await laptop.call('PATCH', path, { label }), 422, 'invalid-input');
    expect((await laptop.call('DELETE', path)).status).toBe(204);
    expectProblem(await laptop.call('PATCH', path, { label: 'Gone' }), 404, 'not-found');
  });

  it('does not let one cut off the branch one sits on', async () => {
    const laptop = await signedIn('laptop');
    const { key } = (await laptop.call('GET', '/api/session')).body;
    expectProblem(await laptop.call('DELETE', `/api/keys/${String(key.id)}`), 409, 'own-key');
    expect((await laptop.call('GET', '/api/session')).status).toBe(200);
  });

  it('holds nothing of another workshop', async () => {
    const { facts } = (await bench.storage.workshops.get(bench.workshopId))!;
    const other = await bench.storage.workshops.create(facts);
    const hers = await bench.storage.keys.create(other.id, 'her phone');
    expect((await bench.call('GET', '/api/keys')).body).not.toContainEqual(
      expect.objectContaining({ label: 'her phone' }),
    );
    expectProblem(await bench.call('DELETE', `/api/keys/${hers.id}`), 404, 'not-found');
    expectProblem(await bench.call('PATCH', `/api/keys/${hers.id}`, { label: 'Mine' }), 404, 'not-found');
    const { code } = await bench.storage.signInCodes.create(other.id);
    const browser = openBrowser(bench.url);
    const { body } = await browser.call('POST', '/api/session', { code });
    expect(body.workshop.id).toBe(other.id);
    expect((await browser.call('GET', '/api/keys')).body).toHaveLength(2);
  });
});
