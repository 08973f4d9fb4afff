import { Inject, Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { SERVICES, type Services } from '../services.js';
import { ApiProblem } from '../problems/api-problem.js';
import { OPEN_TO_ALL, type KnownRequest } from './caller.js';
import { keyInCookie } from './key-cookie.js';
import { wantedWorkshop } from './wanted-workshop.js';
import { csrfGuard } from './csrf-guard.js';

/**
 * Lets in who brings a key that is known and not revoked: in `Authorization: Bearer …`, which no browser adds by
 * itself, or in the cookie, which every browser does, so then the change must come from our own pages.
 */
@Injectable()
export class KeyGuard implements CanActivate {
  constructor(
    @Inject(SERVICES) private readonly services: Services,
    @Inject(Reflector) private readonly reflector: Reflector,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<KnownRequest>();
    const { authorization } = request.headers;
    if (authorization === undefined) csrfGuard(request);
    const open = this.reflector.getAllAndOverride<boolean | undefined>(OPEN_TO_ALL, [
      context.getHandler(),
      context.getClass(),
    ]);
    if (open === true) return true;
    const key =
      authorization === undefined ? keyInCookie(request) : /^Bearer (\S+)$/i.exec(authorization)?.[1];
    const owner =
      key === undefined || !/^[\w-]{20,200}$/.test(key) ? null : await this.services.storage.keys.verify(key);
    if (owner === null) {
      throw new ApiProblem(401, 'key-needed', { says: 'key-needed' });
    }
    const { workshopId: ownWorkshopId, keyId, lastSeenAt } = owner;
    // Whoever asks is not to be refused because that cannot be written.
    await this.services.storage.keys.noteSeen(ownWorkshopId, keyId, lastSeenAt).catch(() => undefined);
    const workshopId = await wantedWorkshop(this.services.storage, ownWorkshopId, request);
    request.caller = { workshopId, ownWorkshopId, keyId };
    return true;
  }
}
