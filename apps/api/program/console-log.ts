import type { Log } from '#nudges';
import { logLevels, type LogLevel } from '../config.js';

/** Where finished lines go. */
export interface Streams {
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
}

const standard: Streams = {
  out: (line) => void process.stdout.write(`${line}\n`),
  err: (line) => void process.stderr.write(`${line}\n`),
};

/**
 * A log of plain lines, `time level message name=value …`: information to standard output, trouble to standard error.
 * @param level the least urgent that is written
 */
export function consoleLog(level: LogLevel, now: () => Date, streams: Streams = standard): Log {
  const writer = (own: LogLevel) => (message: string, details?: Record<string, unknown>) => {
    if (logLevels.indexOf(own) > logLevels.indexOf(level)) return;
    const urgent = own === 'error' || own === 'warn';
    streams[urgent ? 'err' : 'out'](`${now().toISOString()} ${own.padEnd(5)} ${message}${suffix(details)}`);
  };
  return { debug: writer('debug'), info: writer('info'), warn: writer('warn'), error: writer('error') };
}

function suffix(details: Record<string, unknown> = {}): string {
  return Object.entries(details)
    .map(([name, value]) => ` ${name}=${typeof value === 'string' ? value : JSON.stringify(value)}`)
    .join('');
}
