import { Inject, Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { PARTS, type Parts } from '../parts.js';
import { ApiProblem } from '../problems/api-problem.js';
import { OPEN_TO_ALL, type KnownRequest } from './caller.js';

/** Lets in who brings a key that is known and not revoked, in `Authorization: Bearer …`. */
@Injectable()
export class KeyGuard implements CanActivate {
  constructor(
    @Inject(PARTS) private readonly parts: Parts,
    @Inject(Reflector) private readonly reflector: Reflector,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const open = this.reflector.getAllAndOverride<boolean | undefined>(OPEN_TO_ALL, [
      context.getHandler(),
      context.getClass(),
    ]);
    if (open === true) return true;
    const request = context.switchToHttp().getRequest<KnownRequest>();
    const key = /^Bearer ([\w-]{20,200})$/i.exec(request.headers.authorization ?? '')?.[1];
    const owner = key === undefined ? null : await this.parts.storage.keys.verify(key);
    if (owner === null) {
      throw new ApiProblem(
        401,
        'key-needed',
        'A key is needed',
        'Send the access key as “Authorization: Bearer KEY”; it is printed at the start and kept in the data folder.',
      );
    }
    request.caller = { workshopId: owner.workshopId };
    return true;
  }
}
