import { Body, Controller, Delete, Get, Inject, Post, Req, Res } from '@nestjs/common';
import { HttpAdapterHost } from '@nestjs/core';
import { ApiTags } from '@nestjs/swagger';
import type { Server } from 'node:http';
import { networkInterfaces } from 'node:os';
import type { Request, Response } from 'express';
import { session, signIn, signInCode, type SessionView, type SignIn, type SignInCodeView } from '#contract';
import type { AccessKey, Repositories } from '#storage';
import { Caller, Public, type CallerFacts } from '../access/caller.js';
import { clearKeyCookie, keyInCookie, setKeyCookie } from '../access/key-cookie.js';
import { TryLimit } from '../access/try-limit.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { ApiProblem, notFound } from '../problems/api-problem.js';
import { homeAddresses } from './home-addresses.js';
import { signInPath } from './sign-in-path.js';

const WRONG_TRIES = 10;
const WITHIN_MS = 60_000;

/** Signing in and out of a browser. */
@ApiTags('session')
@Controller('session')
export class SessionController {
  private readonly limit: TryLimit;

  constructor(
    @Inject(SERVICES) private readonly services: Services,
    @Inject(HttpAdapterHost) private readonly host: HttpAdapterHost,
  ) {
    this.limit = new TryLimit(() => services.clock.now(), WRONG_TRIES, WITHIN_MS);
  }

  @Post()
  @Public()
  @Documents({
    summary: 'Signs this browser in with a code or a key, and gives it a key of its own in a cookie',
    answer: session,
    status: 201,
    open: true,
    problems: [401, 403, 422, 429],
  })
  async signIn(
    @Body({ schema: signIn }) { code, key, device }: SignIn,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<SessionView> {
    const right = this.limit.take();
    if (typeof right === 'number') throw tooManyTries(right);
    const { storage } = this.services;
    const made = await storage.transaction(async (tx) => {
      const owner = code === undefined ? await tx.keys.verify(key ?? '') : await tx.signInCodes.redeem(code);
      if (owner === null) throw refused(code === undefined);
      await revokeKeyBefore(tx, request);
      return tx.keys.create(owner.workshopId, device);
    });
    right();
    setKeyCookie(request, response, made.raw);
    return shown(storage, made, made.workshopId);
  }

  @Get()
  @Documents({ summary: 'Who one is', answer: session })
  async get(@Caller() { workshopId, ownWorkshopId, keyId }: CallerFacts): Promise<SessionView> {
    const key = await this.services.storage.keys.get(ownWorkshopId, keyId);
    if (key === null) throw notFound('key');
    return shown(this.services.storage, key, workshopId);
  }

  @Delete()
  @Documents({ summary: 'Signs out: the key that came with this is revoked', status: 204, problems: [403] })
  async signOut(
    @Caller() { ownWorkshopId, keyId }: CallerFacts,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<void> {
    await this.services.storage.keys.revoke(ownWorkshopId, keyId);
    clearKeyCookie(request, response);
  }

  @Post('codes')
  @Documents({
    summary: 'A code that lets one other device in, within 15 minutes',
    answer: signInCode,
    status: 201,
    problems: [403],
  })
  async makeCode(@Caller() { ownWorkshopId }: CallerFacts): Promise<SignInCodeView> {
    const { code, expiresAt } = await this.services.storage.signInCodes.create(ownWorkshopId);
    return { code, path: signInPath(code), addresses: this.addresses(), expiresAt: expiresAt.toISOString() };
  }

  private addresses(): string[] {
    const bound = (this.host.httpAdapter.getHttpServer() as Server).address();
    return bound === null || typeof bound === 'string' ? [] : homeAddresses(bound, networkInterfaces());
  }
}

/** A browser that signs in anew gives its former key back, so that it stands in the list of devices once. */
async function revokeKeyBefore(tx: Repositories, request: Request): Promise<void> {
  const before = await tx.keys.verify(keyInCookie(request) ?? '');
  if (before !== null) await tx.keys.revoke(before.workshopId, before.keyId);
}

async function shown({ workshops }: Repositories, key: AccessKey, workshopId: string): Promise<SessionView> {
  const workshop = await workshops.get(workshopId);
  if (workshop === null) throw new Error(`workshop ${workshopId} is gone`);
  const { id, facts, demoOf, begun } = workshop;
  const demo = demoOf === null ? await workshops.demoOf(id) : workshop;
  return {
    workshop: { id, title: facts.title, timeZone: facts.timeZone, isDemo: demoOf !== null, begun },
    demo: demo?.id ?? null,
    key: { id: key.id, label: key.label, createdAt: key.createdAt.toISOString() },
  };
}

function refused(withKey: boolean): ApiProblem {
  return withKey
    ? new ApiProblem(401, 'wrong-key', { says: 'wrong-key' })
    : new ApiProblem(401, 'wrong-code', { says: 'wrong-code' });
}

function tooManyTries(seconds: number): ApiProblem {
  return new ApiProblem(429, 'too-many-tries', { says: 'too-many-tries', seconds }, {}, seconds);
}
