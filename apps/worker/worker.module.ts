import { Inject, Module, type DynamicModule, type OnApplicationShutdown } from '@nestjs/common';
import { logChannel, startNudges, type Clock, type Log, type Nudges } from '#nudges';
import { keepClearing, migrate, openStorage, type Storage } from '#storage';
import type { WorkerConfig } from './config.js';

export interface WorkerParts {
  readonly config: WorkerConfig;
  readonly clock: Clock;
  readonly log: Log;
}

const STORAGE = Symbol('storage');
export const NUDGES = Symbol('nudges');
const CLEARING = Symbol('clearing');

const SWEEP_MS = 60_000;
const CONCURRENCY = 5;

/** Delivers nudges from the database that an API elsewhere writes. Any number of these may run. */
@Module({})
export class WorkerModule implements OnApplicationShutdown {
  constructor(
    @Inject(NUDGES) private readonly nudges: Nudges,
    @Inject(STORAGE) private readonly storage: Storage,
    @Inject(CLEARING) private readonly stopClearing: () => Promise<void>,
  ) {}

  static with({ config, clock, log }: WorkerParts): DynamicModule {
    return {
      module: WorkerModule,
      providers: [
        { provide: STORAGE, useFactory: () => openDatabase({ config, clock, log }) },
        {
          provide: NUDGES,
          inject: [STORAGE],
          useFactory: (storage: Storage) => deliver(storage, { config, clock, log }),
        },
        {
          provide: CLEARING,
          inject: [STORAGE],
          useFactory: (storage: Storage) => keepClearing({ storage, now: () => clock.now(), log }),
        },
      ],
      exports: [NUDGES],
    };
  }

  /** Running deliveries end first; they still need the database. */
  async onApplicationShutdown(): Promise<void> {
    await this.stopClearing();
    await this.nudges.stop();
    await this.storage.close();
  }
}

async function openDatabase({ config, clock, log }: WorkerParts): Promise<Storage> {
  // Workers and the API may start in any order; whoever comes first brings the tables up to date.
  await migrate(config.databaseUrl, (line) => log.info(line));
  return openStorage(config.databaseUrl, { now: () => clock.now() });
}

async function deliver(storage: Storage, { config, clock, log }: WorkerParts): Promise<Nudges> {
  const { databaseUrl, redisUrl } = config;
  return startNudges({
    store: storage.nudges,
    databaseUrl,
    redisUrl,
    clock,
    log,
    channels: [logChannel(log)],
    concurrency: CONCURRENCY,
    sweepEveryMs: SWEEP_MS,
  });
}
