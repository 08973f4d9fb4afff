import type { Answer } from './test-api.js';

/** What of a browser matters for signing in: it keeps a cookie, and says which page asks. */
export interface Browser {
  /** The cookie as it was last set, with its attributes; undefined when there is none. */
  readonly cookie: () => string | undefined;
  call(method: string, path: string, body?: unknown, headers?: Record<string, string>): Promise<Answer>;
  /** The headers it would send with a request from a page of the program. */
  headers(): Record<string, string>;
}

/** @param url of the program */
export function openBrowser(url: string): Browser {
  let cookie: string | undefined;
  const headers = (): Record<string, string> => ({
    'sec-fetch-site': 'same-origin',
    ...(cookie === undefined ? {} : { cookie: cookie.split(';')[0] ?? '' }),
  });
  return {
    cookie: () => cookie,
    headers,
    async call(method, path, body, extra = {}) {
      const response = await fetch(`${url}${path}`, {
        method,
        headers: { ...headers(), 'content-type': 'application/json', ...extra },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      const [set] = response.headers.getSetCookie();
      if (set !== undefined) cookie = /Expires=Thu, 01 Jan 1970/.test(set) ? undefined : set;
      const text = await response.text();
      const { status } = response;
      return { status, headers: response.headers, body: text === '' ? undefined : JSON.parse(text) };
    },
  };
}
