/** A JPEG that was looked into, without what it said of camera, place and time. */
export interface Jpeg {
  readonly width: number;
  readonly height: number;
  readonly bytes: Buffer;
}

const START = 0xd8;
const END = 0xd9;
const SCAN = 0xda;
const COMMENT = 0xfe;
/** Markers of a segment that tells the size of the picture: SOF0 to SOF15 without DHT, JPG and DAC. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
/** Kept of the applications' segments: JFIF (0), the colour profile (2) and how colours are stored (14). */
const KEPT = new Set([0xe0, 0xe2, 0xee]);
const isApplication = (marker: number): boolean => marker >= 0xe0 && marker <= 0xef;
/** Far more segments than a camera writes; a profile in many pieces has a few dozen. */
const MOST_SEGMENTS = 1000;

/**
 * Looks whether bytes are a JPEG by what is in them, whatever they are called, and leaves out Exif, XMP and comments: a
 * phone writes there where the picture was taken. ITU-T T.81, annex B: segments of a marker and a length up to the first
 * scan, and an end-of-image marker.
 * @returns null where they are no JPEG
 */
export function readJpeg(bytes: Buffer): Jpeg | null {
  if (bytes.length < 4 || bytes[0] !== 0xff || bytes[1] !== START) return null;
  const end = bytes.lastIndexOf(Buffer.from([0xff, END]));
  const kept: Buffer[] = [bytes.subarray(0, 2)];
  let size: { readonly width: number; readonly height: number } | undefined;
  let at = 2;
  for (let count = 0; count < MOST_SEGMENTS; count += 1) {
    // A marker may have any number of fill bytes before it.
    while (bytes[at] === 0xff && bytes[at + 1] === 0xff) at += 1;
    const marker = bytes[at + 1];
    if (bytes[at] !== 0xff || marker === undefined || at + 4 > end) return null;
    const next = at + 2 + bytes.readUInt16BE(at + 2);
    if (next < at + 4 || next > end) return null;
    if (isFrame(marker)) {
      if (next - at < 10) return null;
      size = { height: bytes.readUInt16BE(at + 5), width: bytes.readUInt16BE(at + 7) };
    }
    if (marker === SCAN) {
      if (size === undefined || size.width === 0 || size.height === 0) return null;
      // What follows the picture is not shown and may be anything.
      kept.push(bytes.subarray(at, end + 2));
      return { ...size, bytes: Buffer.concat(kept) };
    }
    if (KEPT.has(marker) || !(isApplication(marker) || marker === COMMENT)) {
      kept.push(bytes.subarray(at, next));
    }
    at = next;
  }
  return null;
}
