/** Where this library reports what it does. `details` holds ids and counts, never a nudge's text. */
export interface Log {
  debug(message: string, details?: Record<string, unknown>): void;
  info(message: string, details?: Record<string, unknown>): void;
  warn(message: string, details?: Record<string, unknown>): void;
  error(message: string, details?: Record<string, unknown>): void;
}

/** The message of whatever was thrown; refused connections to several addresses carry only a code. */
export function reasonOf(thrown: unknown): string {
  if (!(thrown instanceof Error)) return String(thrown);
  if (thrown.message !== '') return thrown.message;
  return 'code' in thrown ? String(thrown.code) : thrown.name;
}
