import { systemClock, type Log } from '#nudges';
import {
  DatabaseStartError,
  HomeInUseError,
  HomeUnusableError,
  MigrationError,
  storageTrouble,
  UnsupportedPlatformError,
} from '#storage';
import { readConfig } from './config.js';
import { consoleLog } from './program/console-log.js';
import { exitStatus, StartError } from './program/start-error.js';
import { startProgram, type Program } from './start/start-program.js';

/** Their messages are written for the person at the terminal. */
const forPeople = [
  StartError,
  HomeInUseError,
  HomeUnusableError,
  UnsupportedPlatformError,
  DatabaseStartError,
  MigrationError,
];

try {
  const config = readConfig();
  const log = consoleLog(config.log, () => new Date());
  const program = await startProgram({
    config,
    clock: systemClock,
    log,
    progress: say,
    onDatabaseLost: (reason) => databaseLost(reason),
  });
  say('');
  say(`Benchtide is running at ${program.address}`);
  say('');
  say(`Sign in by this link: ${program.signIn.link}`);
  say(`or with its code ${program.signIn.code} in any browser. It lets one in, once, within 15 minutes.`);
  // What is printed lands in journals, so the key is shown once, to whoever starts this for the first time.
  const { key, path, made } = program.accessKey;
  say(`Later, or from a program, use the key ${made ? `${key}, which is kept in ${path};` : `in ${path};`}`);
  say('programs send it as “Authorization: Bearer KEY”.');
  say(`API: ${program.address}/api, described at ${program.address}/api/docs`);
  say('');
  say('Stop with Ctrl-C.');
  endInOrder(program, log);
} catch (error) {
  const known = forPeople.some((kind) => error instanceof kind);
  process.stderr.write(`${known ? (error as Error).message : unexpected(error)}\n`);
  process.exit(error instanceof StartError ? error.status : exitStatus.software);
}

/** Without its database the program is of no use; ended with a status of its own, it can be started again from outside. */
function databaseLost(reason: Error): void {
  process.stderr.write(
    `The database ended and cannot be started again, so this ends too.\n${reason.message}\n`,
  );
  process.exit(exitStatus.unavailable);
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

function unexpected(error: unknown): string {
  if (storageTrouble(error) === 'disk-full') {
    return 'It did not start: the disk of the database is full. Free some space there, or move the data folder to another disk and name it with BENCHTIDE_HOME.';
  }
  const reason = error instanceof Error ? error.message : String(error);
  return `It did not start: ${reason === '' && error instanceof Error ? error.name : reason}`;
}

/** One signal ends the program in order, a second one at once. */
function endInOrder(program: Program, log: Log): void {
  let ending = false;
  const end = (status: number): void => {
    if (ending) process.exit(status === 0 ? 130 : status);
    ending = true;
    void program.stop().then(() => process.exit(status));
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => end(0));
  for (const fault of ['uncaughtException', 'unhandledRejection'] as const) {
    process.on(fault, (error: unknown) => {
      log.error('Something went wrong', {
        fault,
        reason: error instanceof Error ? error.stack : String(error),
      });
      end(exitStatus.software);
    });
  }
}
