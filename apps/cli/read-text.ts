import { isUtf8 } from 'node:buffer';
import { closeSync, openSync, readSync } from 'node:fs';

/** Most that is read of a file; a run file with a log as long as it may be is a fifth of it. */
const MOST_BYTES = 5_000_000;
const LINE_FEED = 0x0a;

/** The text of a file, or why there is none, with the line where that is known. */
export type TextOutcome =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: Unreadable; readonly line?: number };

/** Why a file gives no text. */
export type Unreadable =
  | { readonly says: 'no-such-file' | 'folder' | 'forbidden' | 'utf-16' | 'not-utf-8' }
  /** With the system's own code. */
  | { readonly says: 'failed'; readonly code: string }
  | { readonly says: 'too-large'; readonly megabytes: number };

/** Reads a file in UTF-8, with or without a mark at its beginning. Never more of it than a run file can have. */
export function readText(path: string): TextOutcome {
  let bytes: Buffer;
  try {
    bytes = firstBytes(path, MOST_BYTES + 1);
  } catch (cause) {
    return { ok: false, why: reasonOf(cause as NodeJS.ErrnoException) };
  }
  if (bytes.length > MOST_BYTES) {
    return { ok: false, why: { says: 'too-large', megabytes: MOST_BYTES / 1e6 } };
  }
  if (isUtf16(bytes)) return { ok: false, why: { says: 'utf-16' } };
  if (isUtf8(bytes)) return { ok: true, text: bytes.toString('utf8') };
  return { ok: false, why: { says: 'not-utf-8' }, line: firstLineOutside(bytes) };
}

/** Reads on until there are enough or the end comes, as a pipe gives a little at a time and a device never ends. */
function firstBytes(path: string, most: number): Buffer {
  const file = openSync(path, 'r');
  try {
    const pieces: Buffer[] = [];
    let length = 0;
    while (length < most) {
      const piece = Buffer.allocUnsafe(Math.min(most - length, 1 << 20));
      const read = readSync(file, piece);
      if (read === 0) break;
      pieces.push(piece.subarray(0, read));
      length += read;
    }
    return Buffer.concat(pieces);
  } finally {
    closeSync(file);
  }
}

function reasonOf({ code }: NodeJS.ErrnoException): Unreadable {
  switch (code) {
    case 'ENOENT':
      return { says: 'no-such-file' };
    case 'EISDIR':
      return { says: 'folder' };
    case 'EACCES':
    case 'EPERM':
      return { says: 'forbidden' };
    default:
      return { says: 'failed', code: String(code) };
  }
}

/** By its mark, or by the zero in one half of its first character. */
function isUtf16([first, second]: Buffer): boolean {
  const marked = (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
  return marked || (first === 0) !== (second === 0);
}

function firstLineOutside(bytes: Buffer): number {
  let line = 1;
  for (let from = 0; from < bytes.length; line += 1) {
    const end = bytes.indexOf(LINE_FEED, from);
    const to = end === -1 ? bytes.length : end + 1;
    if (!isUtf8(bytes.subarray(from, to))) return line;
    from = to;
  }
  return line;
}
