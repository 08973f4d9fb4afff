import type { Log } from '#nudges';

/** Keeps what was logged, for a test to look at. */
export class QuietLog implements Log {
  readonly lines: { level: keyof Log; message: string; details: Record<string, unknown> }[] = [];

  debug(message: string, details: Record<string, unknown> = {}): void {
    this.lines.push({ level: 'debug', message, details });
  }

  info(message: string, details: Record<string, unknown> = {}): void {
    this.lines.push({ level: 'info', message, details });
  }

  warn(message: string, details: Record<string, unknown> = {}): void {
    this.lines.push({ level: 'warn', message, details });
  }

  error(message: string, details: Record<string, unknown> = {}): void {
    this.lines.push({ level: 'error', message, details });
  }
}
