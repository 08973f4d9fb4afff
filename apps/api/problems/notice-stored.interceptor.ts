import {
  Inject,
  Injectable,
  type CallHandler,
  type ExecutionContext,
  type NestInterceptor,
} from '@nestjs/common';
import type { Request, Response } from 'express';
import { tap, type Observable } from 'rxjs';
import { DiskWatch } from './disk-watch.js';

/** Tells the watch over the disk of each request that has stored something, so that health is right again at once. */
@Injectable()
export class NoticeStored implements NestInterceptor {
  constructor(@Inject(DiskWatch) private readonly disk: DiskWatch) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const { method } = context.switchToHttp().getRequest<Request>();
    const response = context.switchToHttp().getResponse<Response>();
    return next.handle().pipe(tap(() => stores(method, response.statusCode) && this.disk.stored()));
  }
}

/** Previews and what-ifs are asked by POST too, and answer 200: they store nothing. */
function stores(method: string, status: number): boolean {
  return method === 'PUT' || method === 'DELETE' || (method === 'POST' && status === 201);
}
