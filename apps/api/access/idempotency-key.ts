import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import { ApiProblem } from '../problems/api-problem.js';

/** The request's `Idempotency-Key`, or undefined. */
export const IdempotencyKey = createParamDecorator((_: unknown, context: ExecutionContext) => {
  const key = context.switchToHttp().getRequest<Request>().headers['idempotency-key'];
  if (key === undefined) return undefined;
  if (typeof key !== 'string' || !/^[\x21-\x7e]{8,200}$/.test(key)) {
    throw new ApiProblem(400, 'bad-idempotency-key', { says: 'bad-idempotency-key' });
  }
  return key;
});
