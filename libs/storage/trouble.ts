/** Why the database could not do what it was asked, where that is no fault of the asking. */
export type StorageTrouble = 'unreachable' | 'disk-full';

/**
 * Codes of PostgreSQL (appendix A "Error Codes": class 08, class 57P, 53300), of the system, and of the database
 * client ("Can't reach database server", "server has closed the connection", "unable to start a transaction in time").
 */
const UNREACHABLE =
  /^(08\w{3}|57P0[1-5]|53300|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT|ENOTFOUND|EHOSTUNREACH|P1001|P1002|P1008|P1017|P2024|P2028)$/;
/** disk_full, and what the system says. */
const DISK_FULL = /^(53100|ENOSPC|EDQUOT)$/;
/** Trouble that comes without a code: from the pool, and from a connection that ends under a query. */
const UNREACHABLE_WORDS =
  /Connection terminated|Client has encountered a connection error|timeout exceeded when trying to connect|DatabaseNotReachable|ConnectionClosed|Server has closed the connection/;
const DISK_FULL_WORDS = /No space left on device/;

/**
 * Tells trouble of the database itself from everything else that can be thrown. The client wraps the database's own
 * error, at places that change between its versions, so all codes and messages within are looked at.
 * @returns null for anything else
 */
export function storageTrouble(thrown: unknown): StorageTrouble | null {
  const { codes, words } = told(thrown);
  if (codes.some((code) => DISK_FULL.test(code)) || words.some((text) => DISK_FULL_WORDS.test(text))) {
    return 'disk-full';
  }
  if (codes.some((code) => UNREACHABLE.test(code)) || words.some((text) => UNREACHABLE_WORDS.test(text))) {
    return 'unreachable';
  }
  return null;
}

/** Errors of the client nest a handful of these; a bound, as they may point at anything. */
const MOST_PARTS = 200;

function told(thrown: unknown): { codes: string[]; words: string[] } {
  const codes: string[] = [];
  const words: string[] = [];
  const seen = new Set<object>();
  const look = (value: unknown): void => {
    if (value === null || typeof value !== 'object' || seen.has(value) || seen.size >= MOST_PARTS) return;
    seen.add(value);
    if (value instanceof Error) {
      words.push(value.name, value.message);
      look(value.cause);
    }
    for (const [name, inner] of Object.entries(value)) {
      if (typeof inner === 'string') (/code$/i.test(name) ? codes : words).push(inner);
      else look(inner);
    }
  };
  look(thrown);
  return { codes, words };
}
