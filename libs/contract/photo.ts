import { z } from 'zod';
import { instant, line, uuid } from './common.js';

/** What may be kept of photos. Devices shrink them before they send them, to a third of the most or less. */
export const photoLimits = {
  /** Of one photo. */
  bytes: 1_500_000,
  /** Of the longer side, in pixels. */
  side: 4096,
  /** In one note. */
  inNote: 6,
  /** Of all photos of a run. */
  runBytes: 40_000_000,
  /** Of all photos of a workshop, its demo apart. */
  workshopBytes: 2_000_000_000,
  /** Each counts at least so much, which bounds their number, too. */
  leastCounted: 50_000,
} as const;

/** A photo on its way in. */
export const newPhoto = z
  .strictObject({
    id: uuid.meta({ description: 'Chosen by who sends it; sent again, it is kept once' }),
    data: z
      .string()
      .min(1)
      .max((photoLimits.bytes / 3) * 4)
      .meta({
        description:
          'The JPEG in base64. What it says of the camera, the place and the time is left out of what is kept',
      }),
  })
  .meta({ id: 'NewPhoto' });

/** What is known of a photo besides the picture. */
export const storedPhoto = z
  .strictObject({
    id: uuid,
    keptAt: instant,
    width: z.int().meta({ description: 'Pixels' }),
    height: z.int().meta({ description: 'Pixels' }),
    size: z.int().meta({ description: 'Bytes' }),
  })
  .meta({ id: 'StoredPhoto' });

/** A photo in a note. */
export const shownPhoto = z
  .strictObject({
    photo: uuid.meta({ description: 'Id of a photo of the run' }),
    alt: line(300).optional().meta({ description: 'What is to be seen, for who cannot see it' }),
  })
  .meta({ id: 'ShownPhoto' });

export type NewPhoto = z.infer<typeof newPhoto>;
export type StoredPhotoView = z.infer<typeof storedPhoto>;
