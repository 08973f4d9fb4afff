import { newId } from '../api/new-id.js';

/** A photo on its way to the log. */
export interface PhotoToSend {
  /** Chosen here, so that it is kept once however often it is sent. */
  readonly id: string;
  /** A JPEG in base64. */
  readonly data: string;
}

/** Longer sides, in pixels, and qualities of JPEG that are tried, until the photo is small enough. */
const TRIES = [
  { side: 1600, quality: 0.8 },
  { side: 1600, quality: 0.6 },
  { side: 1200, quality: 0.6 },
  { side: 800, quality: 0.5 },
] as const;

/** In bytes; under half of what the API takes. */
const SMALL_ENOUGH = 600_000;

/**
 * Draws a photo anew, smaller and upright, as a JPEG. What the file says of camera, place and time is not drawn, so it stays here.
 * @throws DOMException where the browser cannot read it as a picture
 */
export async function shrinkPhoto(file: Blob): Promise<PhotoToSend> {
  const picture = await createImageBitmap(file);
  try {
    let data = '';
    for (const { side, quality } of TRIES) {
      data = drawn(picture, side, quality);
      if ((data.length / 4) * 3 <= SMALL_ENOUGH) break;
    }
    return { id: newId(), data };
  } finally {
    picture.close();
  }
}

function drawn(picture: ImageBitmap, side: number, quality: number): string {
  const scale = Math.min(1, side / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const context = canvas.getContext('2d');
  if (context === null) throw new DOMException('no canvas', 'InvalidStateError');
  // A JPEG has no transparency: what is clear would be black.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/jpeg', quality).slice('data:image/jpeg;base64,'.length);
}

/** The address under which a photo that was not sent yet is shown. */
export function shownHere({ data }: PhotoToSend): string {
  return `data:image/jpeg;base64,${data}`;
}
