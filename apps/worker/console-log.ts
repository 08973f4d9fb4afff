import type { Log } from '#nudges';
import { logLevels, type LogLevel } from './config.js';

/** Lines as the API writes them, so that both can be read together; all to standard error, as there is no other output. */
export function consoleLog(level: LogLevel, now: () => Date): Log {
  const shown = new Set(logLevels.slice(0, logLevels.indexOf(level) + 1));
  const line =
    (own: LogLevel) =>
    (message: string, details: Record<string, unknown> = {}): void => {
      if (!shown.has(own)) return;
      const rest = Object.entries(details).map(([name, value]) => `${name}=${plain(value)}`);
      process.stderr.write(`${[now().toISOString(), own.padEnd(5), message, ...rest].join(' ')}\n`);
    };
  return { error: line('error'), warn: line('warn'), info: line('info'), debug: line('debug') };
}

function plain(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}
