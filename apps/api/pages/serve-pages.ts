import { relative } from 'node:path';
import { NotFoundException } from '@nestjs/common';
import { static as staticFiles, type Handler, type NextFunction, type Request, type Response } from 'express';
import { setPageHeaders } from './page-headers.js';

/** Copies that the build lays beside a file, best first: name in `Accept-Encoding`, ending. */
const copies = [
  ['br', '.br'],
  ['gzip', '.gz'],
] as const;

/**
 * Serves the web build. A path that names no file is a place inside the page, so it gets the page; what is not
 * there, and everything below /api, is left to whoever comes next. The folder may be missing.
 * @param folder the web build, absolute
 */
export function servePages(folder: string): Handler {
  const plain = filesOf(folder);
  const compressed = copies.map(([encoding, ending]) => {
    return { encoding, ending, files: filesOf(folder, encoding, ending) };
  });
  return (request, response, next) => {
    const path = wantedFile(request);
    if (path === undefined) {
      next();
      return;
    }
    const tries = [
      ...compressed
        .filter(({ encoding }) => request.acceptsEncodings(encoding) !== false)
        .map(({ ending, files }) => ({ url: `${path}${ending}`, files })),
      { url: path, files: plain },
    ];
    tryEach(tries, request, response, next);
  };
}

/** Outside /api there is nothing but the pages; without this the router would say so in HTML of its own. */
export function onlyApiFromHere(request: Request, _response: Response, next: NextFunction): void {
  next(isApi(request.path) ? undefined : new NotFoundException());
}

/** As the router takes it, which does not mind capitals. */
function isApi(path: string): boolean {
  return /^\/api(\/|$)/i.test(path);
}

/** @returns the path of the file a request is for; undefined when it is for none */
function wantedFile(request: Request): string | undefined {
  const { path } = request;
  if (request.method !== 'GET' && request.method !== 'HEAD') return undefined;
  if (isApi(path) || copies.some(([, ending]) => path.endsWith(ending))) return undefined;
  const namesFile = path.slice(path.lastIndexOf('/')).includes('.');
  if (namesFile) return path;
  return request.accepts('html') === false ? undefined : '/index.html';
}

/** Serves the files of the folder, or only their compressed copies. */
function filesOf(folder: string, encoding?: string, ending = ''): Handler {
  return staticFiles(folder, {
    index: false,
    redirect: false,
    cacheControl: false,
    setHeaders(response, copy) {
      const path = copy.slice(0, copy.length - ending.length);
      setPageHeaders(response, relative(folder, path));
      response.setHeader('Vary', 'Accept-Encoding');
      if (encoding === undefined) return;
      response.setHeader('Content-Encoding', encoding);
      response.type(path.slice(path.lastIndexOf('.')));
    },
  });
}

interface Try {
  readonly url: string;
  readonly files: Handler;
}

function tryEach(tries: readonly Try[], request: Request, response: Response, next: NextFunction): void {
  const { url } = request;
  const attempt = (index: number): void => {
    const current = tries[index];
    request.url = current?.url ?? url;
    if (current === undefined) {
      next();
      return;
    }
    void current.files(request, response, (error: unknown) => {
      if (error === undefined) {
        attempt(index + 1);
        return;
      }
      request.url = url;
      next(error);
    });
  };
  attempt(0);
}
