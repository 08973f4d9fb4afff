import type { CallHandler, ExecutionContext, NestInterceptor } from '@nestjs/common';
import type { Request, Response } from 'express';
import { map, type Observable } from 'rxjs';
import { withTexts } from '#words';
import { wordsOf } from '#words/all';
import { readerOf } from './reader-of.js';

/** Gives every message of an answer its text, in the language and the units of whoever asked. */
export class TextsInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const http = context.switchToHttp();
    const reader = readerOf(http.getRequest<Request>());
    const response = http.getResponse<Response>();
    response.vary('Accept-Language');
    response.vary('Prefer');
    response.setHeader('Content-Language', reader.language);
    return next.handle().pipe(map((answer: unknown) => withTexts(answer, reader, wordsOf[reader.language])));
  }
}
