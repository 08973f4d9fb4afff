import type { INestApplicationContext } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { systemClock, type Log } from '#nudges';
import { ConfigError, readConfig } from './config.js';
import { consoleLog } from './console-log.js';
import { WorkerModule } from './worker.module.js';

// As in sysexits.h: the settings are wrong, or something in here is.
const USAGE = 64;
const SOFTWARE = 70;

try {
  const config = readConfig();
  const log = consoleLog(config.log, () => systemClock.now());
  const worker = await NestFactory.createApplicationContext(
    WorkerModule.with({ config, clock: systemClock, log }),
    // Nest would end the process itself, without saying why in this log's form.
    { logger: false, abortOnError: false },
  );
  endInOrder(worker, log);
  log.info('The worker delivers nudges', { queue: config.redisUrl === undefined ? 'postgres' : 'redis' });
} catch (error) {
  const reason = error instanceof Error ? error.message || error.name : String(error);
  process.stderr.write(
    error instanceof ConfigError ? `${reason}\n` : `The worker did not start: ${reason}\n`,
  );
  process.exit(error instanceof ConfigError ? USAGE : SOFTWARE);
}

/** One signal ends the worker in order, a second one at once. */
function endInOrder(worker: INestApplicationContext, log: Log): void {
  let ending = false;
  const end = (status: number): void => {
    if (ending) process.exit(status === 0 ? 130 : status);
    ending = true;
    worker.close().then(
      () => process.exit(status),
      (error: unknown) => {
        log.error('The worker did not stop in order', { reason: String(error) });
        process.exit(SOFTWARE);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => end(0));
  for (const fault of ['uncaughtException', 'unhandledRejection'] as const) {
    process.on(fault, (error: unknown) => {
      log.error('Something went wrong', {
        fault,
        reason: error instanceof Error ? error.stack : String(error),
      });
      end(SOFTWARE);
    });
  }
}
