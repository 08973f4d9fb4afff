import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

/** Fonts and pictures other than drawings are compressed in themselves. */
const worthIt = /\.(js|css|html|svg|json|webmanifest)$/;
/** Below this a copy would not save a packet. */
const SMALLEST_BYTES = 1_400;

/**
 * Lays compressed copies (`.br`, `.gz`) beside the text files of a folder, once, so that serving costs nothing.
 * @param {string} folder
 */
export function compressBelow(folder) {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    if (!entry.isFile() || !worthIt.test(path)) continue;
    const content = readFileSync(path);
    if (content.length < SMALLEST_BYTES) continue;
    const params = { [constants.BROTLI_PARAM_SIZE_HINT]: content.length };
    writeFileSync(`${path}.br`, brotliCompressSync(content, { params }));
    writeFileSync(`${path}.gz`, gzipSync(content, { level: constants.Z_BEST_COMPRESSION }));
  }
}
