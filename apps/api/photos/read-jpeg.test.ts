import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallJpeg, withExif } from '../../../tests/support/small-jpeg.js';
import { readJpeg } from './read-jpeg.js';

describe('a JPEG', () => {
  it('is told by what is in it, with its size', () => {
    expect(readJpeg(smallJpeg)).toMatchObject({ width: 16, height: 8 });
    expect(readJpeg(smallJpeg)?.bytes.equals(smallJpeg)).toBe(true);
  });

  it('loses what a phone writes into it of place and time, and what follows the picture', () => {
    const tail = Buffer.from('<script>alert(1)</script>');
    const taken = Buffer.concat([withExif(smallJpeg, 'GPS 53.3498 N'), tail]);
    expect(taken.includes('GPS 53.3498 N')).toBe(true);
    const read = readJpeg(taken);
    expect(read?.bytes.equals(smallJpeg)).toBe(true);
    expect(read).toMatchObject({ width: 16, height: 8 });
  });

  it.each([
    ['a drawing with a script', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>')],
    ['a page', Buffer.from('<!doctype html><title>No picture</title>')],
    ['a PNG', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex')],
    ['nothing', Buffer.alloc(0)],
    ['its first bytes alone', smallJpeg.subarray(0, 20)],
    ['one that ends within the picture', smallJpeg.subarray(0, smallJpeg.length - 2)],
    ['a page that begins as one', Buffer.concat([Buffer.from('ffd8ffe0', 'hex'), Buffer.from('<html>')])],
    ['a picture of no size', withSize(smallJpeg, 0, 0)],
  ])('is not %s', (_, bytes) => {
    expect(readJpeg(bytes)).toBeNull();
  });

  it('is read or refused, whatever is broken in it', () => {
    fc.assert(
      fc.property(fc.nat(smallJpeg.length - 1), fc.integer({ min: 0, max: 255 }), (place, value) => {
        const broken = Buffer.from(smallJpeg);
        broken[place] = value;
        const read = readJpeg(broken);
        if (read !== null) expect(read.bytes.length).toBeLessThanOrEqual(smallJpeg.length);
      }),
    );
  });
});

function withSize(jpeg: Buffer, width: number, height: number): Buffer {
  const changed = Buffer.from(jpeg);
  const frame = changed.indexOf(Buffer.from([0xff, 0xc0]));
  changed.writeUInt16BE(height, frame + 5);
  changed.writeUInt16BE(width, frame + 7);
  return changed;
}
