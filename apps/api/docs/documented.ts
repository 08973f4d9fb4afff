import { applyDecorators, HttpCode } from '@nestjs/common';
import { ApiHeader, ApiOperation, ApiResponse, ApiSecurity } from '@nestjs/swagger';
import type { z } from 'zod';

/** What a route answers, for the API document. Every failure is a problem document. */
export interface Documented {
  readonly summary: string;
  /** Of the successful answer; absent for an empty one. */
  readonly answer?: z.ZodType;
  /** The answer is a list of `answer`. */
  readonly list?: boolean;
  readonly status?: number;
  /** Statuses of the problems to be expected, besides 401 and 500. */
  readonly problems?: readonly number[];
  /** It honours `Idempotency-Key`. */
  readonly once?: boolean;
  readonly open?: boolean;
}

const titles: Readonly<Record<number, string>> = {
  401: 'No key, or one that is not known',
  403: 'A page of another site asked for it',
  404: 'Nothing of that kind',
  409: 'The key is taken, or the version is not the latest',
  422: 'What was sent cannot be used; `issues` says why, field by field',
  429: 'Too many wrong tries; Retry-After says how long to wait',
  500: 'Something went wrong here',
  503: 'Not ready, or the workshop is being worked on',
};

/** Puts a route into the API document and sets its status. */
export function Documents(facts: Documented): MethodDecorator & ClassDecorator {
  const { summary, answer, status = 200, list = false } = facts;
  const failures = [...(facts.open === true ? [] : [401]), ...(facts.problems ?? []), 500];
  return applyDecorators(
    ApiOperation({ summary }),
    HttpCode(status),
    ApiResponse({
      status,
      description: summary,
      ...(answer === undefined ? {} : { standardSchema: answer as never, isArray: list }),
    }),
    ...failures.map((failure) =>
      ApiResponse({
        status: failure,
        description: titles[failure] ?? 'Refused',
        content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
      }),
    ),
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
