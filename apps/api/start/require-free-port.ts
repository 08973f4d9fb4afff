import { createServer } from 'node:net';
import { exitStatus, StartError } from '../program/start-error.js';

/**
 * Finds out before anything else is started whether the port can be had.
 * @throws StartError in a sentence when it cannot
 */
export async function requireFreePort(port: number, bind: string): Promise<void> {
  await new Promise<void>((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => reject(portError(error, port, bind)));
    probe.listen(port, bind, () => probe.close(() => resolve()));
  });
}

/** What went wrong with listening, for the person at the terminal. */
export function portError(error: NodeJS.ErrnoException, port: number, bind: string): Error {
  switch (error.code) {
    case 'EADDRINUSE':
      return new StartError(
        `Port ${String(port)} is taken by another program. Stop that one, or choose another with PORT=4781 npm start.`,
      );
    case 'EACCES':
      return new StartError(
        `Port ${String(port)} needs rights this user does not have; choose one from 1024 up with PORT.`,
      );
    case 'EADDRNOTAVAIL':
      return new StartError(
        `BENCHTIDE_BIND is “${bind}”, which is no address of this machine; accepted: 127.0.0.1 or one that is.`,
        exitStatus.usage,
      );
    default:
      return error;
  }
}
