import { randomUUID } from 'node:crypto';
import { Catch, HttpException, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { Log } from '#nudges';
import { storageTrouble, WorkshopBusyError } from '#storage';
import { textsFor } from '#words';
import { wordsOf } from '#words/all';
import { readerOf } from '../words/reader-of.js';
import type { DiskWatch } from './disk-watch.js';
import { ApiProblem } from './api-problem.js';

/** Turns whatever was thrown into a problem document. What was not foreseen is logged and not told. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(
    private readonly log: Log,
    private readonly disk: DiskWatch,
  ) {}

  catch(thrown: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const response = http.getResponse<Response>();
    const request = http.getRequest<Request>();
    const problem =
      foreseen(thrown, request) ?? this.ofDatabase(thrown, request) ?? this.unforeseen(thrown, request);
    if (response.headersSent) {
      response.end();
      return;
    }
    if (problem.status === 401) response.setHeader('WWW-Authenticate', 'Bearer');
    const retryAfterS = problem.retryAfterS ?? (problem.status === 503 ? 2 : undefined);
    if (retryAfterS !== undefined) response.setHeader('Retry-After', String(retryAfterS));
    const reader = readerOf(request);
    response.vary('Accept-Language');
    response.vary('Prefer');
    response.setHeader('Content-Language', reader.language);
    response
      .status(problem.status)
      .type('application/problem+json')
      .send(JSON.stringify(problem.body(request.originalUrl, textsFor(reader, wordsOf[reader.language]))));
  }

  /** Trouble of the database, which is no fault of the request: sent again later, it may well work. */
  private ofDatabase(thrown: unknown, request: Request): ApiProblem | undefined {
    const trouble = storageTrouble(thrown);
    if (trouble === null) return undefined;
    this.log.warn('The database failed a request', { trouble, method: request.method, path: request.path });
    if (trouble === 'unreachable') {
      return new ApiProblem(503, 'no-database', { says: 'no-database' }, {}, 5);
    }
    this.disk.complain();
    return new ApiProblem(507, 'disk-full', { says: 'disk-full', folder: this.disk.dataFolder }, {}, 60);
  }

  private unforeseen(thrown: unknown, request: Request): ApiProblem {
    const incident = randomUUID();
    const reason = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);
    this.log.error('A request failed', { incident, method: request.method, path: request.path, reason });
    return new ApiProblem(500, 'internal', { says: 'internal' }, { incident });
  }
}

function foreseen(thrown: unknown, request: Request): ApiProblem | undefined {
  if (thrown instanceof ApiProblem) return thrown;
  if (thrown instanceof WorkshopBusyError) return new ApiProblem(503, 'busy', { says: 'workshop-busy' });
  switch (statusOf(thrown)) {
    case 404:
      return new ApiProblem(404, 'not-found', {
        says: 'nothing-there',
        method: request.method,
        path: pathOf(request),
      });
    case 413:
      return new ApiProblem(413, 'too-large', { says: 'too-large', kilobytes: mostRead(thrown) });
    case 415:
      return new ApiProblem(415, 'unsupported-media-type', { says: 'not-json' });
    case 400:
      return new ApiProblem(400, 'malformed', { says: 'malformed' });
    default:
      return undefined;
  }
}

/** The body reader's error says where its limit is, and Nest hands it on as the cause of its own. */
function mostRead(thrown: unknown): number | undefined {
  const told = thrown instanceof HttpException ? thrown.cause : thrown;
  const limit = told instanceof Error && 'limit' in told ? Number(told.limit) : 0;
  if (!(limit > 0)) return undefined;
  return Math.round(limit / 1024);
}

/** Without the query, and with the prefix that the router has taken off. */
function pathOf(request: Request): string {
  return request.originalUrl.replace(/\?.*/, '');
}

/** Of Nest's own exceptions, and of the body parser's errors, which carry a status too. */
function statusOf(thrown: unknown): number | undefined {
  if (thrown instanceof HttpException) return thrown.getStatus();
  if (thrown instanceof Error && 'status' in thrown && typeof thrown.status === 'number')
    return thrown.status;
  return undefined;
}
