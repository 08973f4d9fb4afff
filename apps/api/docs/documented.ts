import { applyDecorators, HttpCode } from '@nestjs/common';
import { ApiHeader, ApiOperation, ApiResponse, ApiSecurity } from '@nestjs/swagger';
import type { z } from 'zod';
import { problemResponse } from './problem-response.js';

/** What a route answers, for the API document. Every failure is a problem document. */
export interface Documented {
  readonly summary: string;
  /** Of the successful answer; absent for an empty one. */
  readonly answer?: z.ZodType;
  /** The answer is a list of `answer`. */
  readonly list?: boolean;
  /** The media type of an answer that is no JSON. */
  readonly media?: string;
  readonly status?: number;
  /** Statuses of the problems to be expected, besides 401, 410, 500 and those common to all (common-problems.ts). */
  readonly problems?: readonly number[];
  /** It honours `Idempotency-Key`. */
  readonly once?: boolean;
  readonly open?: boolean;
}

/** Puts a route into the API document and sets its status. */
export function Documents(facts: Documented): MethodDecorator & ClassDecorator {
  const { summary, answer, media, status = 200, list = false } = facts;
  const failures = [...(facts.open === true ? [] : [401, 410]), ...(facts.problems ?? []), 500];
  return applyDecorators(
    ApiOperation({ summary }),
    HttpCode(status),
    ApiResponse({
      status,
      description: summary,
      ...(answer === undefined ? {} : { standardSchema: answer as never, isArray: list }),
      ...(media !== undefined && { content: { [media]: { schema: { type: 'string', format: 'binary' } } } }),
    }),
    ...failures.map((failure) => ApiResponse({ status: failure, ...problemResponse(failure) })),
    ...(facts.once === true
      ? [
          ApiHeader({
            name: 'Idempotency-Key',
            required: false,
            description: 'The same key and body again get the same answer, and create nothing new',
          }),
        ]
      : []),
    ...(facts.open === true ? [] : [ApiSecurity('key'), ApiSecurity('cookie')]),
  );
}
