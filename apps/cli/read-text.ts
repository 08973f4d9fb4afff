import { isUtf8 } from 'node:buffer';
import { closeSync, openSync, readSync } from 'node:fs';

/** Most that is read of a file; a run file with a log as long as it may be is a fifth of it. */
const MOST_BYTES = 5_000_000;
const LINE_FEED = 0x0a;

/** The text of a file, or why there is none, with the line where that is known. */
export type TextOutcome =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: string; readonly line?: number };

/** Reads a file in UTF-8, with or without a mark at its beginning. Never more of it than a run file can have. */
export function readText(path: string): TextOutcome {
  let bytes: Buffer;
  try {
    bytes = firstBytes(path, MOST_BYTES + 1);
  } catch (cause) {
    return { ok: false, why: `cannot be read: ${reasonOf(cause as NodeJS.ErrnoException)}.` };
  }
  if (bytes.length > MOST_BYTES) {
    return { ok: false, why: `is too large; accepted: up to ${String(MOST_BYTES / 1e6)} MB.` };
  }
  if (isUtf16(bytes)) return { ok: false, why: 'is written in UTF-16; accepted: UTF-8. Save it as UTF-8.' };
  if (isUtf8(bytes)) return { ok: true, text: bytes.toString('utf8') };
  const why = 'is not written in UTF-8, perhaps in Latin-1; accepted: UTF-8. Save it as UTF-8.';
  return { ok: false, why, line: firstLineOutside(bytes) };
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

function reasonOf({ code }: NodeJS.ErrnoException): string {
  switch (code) {
    case 'ENOENT':
      return 'there is no such file';
    case 'EISDIR':
      return 'it is a folder';
    case 'EACCES':
    case 'EPERM':
      return 'you may not read it';
    default:
      return String(code);
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
