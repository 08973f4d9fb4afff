import { describe, expect, it } from 'vitest';
import { mannerOf } from './copies.js';

const origin = 'http://127.0.0.1:4780';
const asked = (method: string, path: string, mode = 'cors'): string =>
  mannerOf({ method, url: new URL(path, origin).href, mode, origin });

describe('how a request is answered', () => {
  it.each([
    '/api/runs',
    '/api/runs/0197-1',
    '/api/runs/0197-1/plan',
    '/api/runs/0197-1/amounts',
    '/api/runs/0197-1/log',
    '/api/workshop',
    '/api/stock',
    '/api/gather?runs=0197-1,0197-2',
  ])('keeps a copy of what the bench needs: %s', (path) => {
    expect(asked('GET', path)).toBe('fresh-or-copy');
  });

  it.each(['/api/session', '/api/inbox/stream', '/api/inbox', '/api/docs', '/api/runs/0197-1/plan/x'])(
    'keeps none of %s',
    (path) => {
      expect(asked('GET', path)).toBe('leave');
    },
  );

  it('never stands between a change and the API', () => {
    for (const method of ['POST', 'PUT', 'PATCH', 'DELETE']) {
      expect(asked(method, '/api/runs/0197-1/log')).toBe('leave');
    }
    expect(asked('POST', '/api/session')).toBe('leave');
  });

  it('takes notice of a sign-out', () => {
    expect(asked('DELETE', '/api/session')).toBe('sign-out');
  });

  it('serves pages and files of the build, and nothing of elsewhere', () => {
    expect(asked('GET', '/runs/0197-1', 'navigate')).toBe('page');
    expect(asked('GET', '/assets/index-abc.js')).toBe('asset');
    expect(asked('GET', 'https://elsewhere.example/api/runs')).toBe('leave');
  });
});
