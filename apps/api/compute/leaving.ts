import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Response } from 'express';

/** A signal that is aborted when the client closes the connection before it has its answer. */
export const Leaving = createParamDecorator((_: unknown, context: ExecutionContext): AbortSignal => {
  const response = context.switchToHttp().getResponse<Response>();
  const leaving = new AbortController();
  response.once('close', () => {
    if (!response.writableFinished) leaving.abort();
  });
  return leaving.signal;
});
