import { createParamDecorator, SetMetadata, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';

/** Whose key came with the request, and what it asks about. */
export interface CallerFacts {
  /** What the request is about: the caller's own workshop, or its demo. */
  readonly workshopId: string;
  /** Whose the key is: keys, codes and the demo belong to this one. */
  readonly ownWorkshopId: string;
  readonly keyId: string;
}

/** A request that passed the key guard. */
export type KnownRequest = Request & { caller?: CallerFacts };

/** The caller of a request that passed the key guard. */
export const Caller = createParamDecorator((_: unknown, context: ExecutionContext): CallerFacts => {
  const { caller } = context.switchToHttp().getRequest<KnownRequest>();
  if (caller === undefined) throw new Error('the key guard has not seen this request');
  return caller;
});

export const OPEN_TO_ALL = 'open-to-all';

/** For the few routes that answer without a key. */
export const Public = (): MethodDecorator & ClassDecorator => SetMetadata(OPEN_TO_ALL, true);
