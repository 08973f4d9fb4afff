import { shownDemo } from '../preferences/shown-workshop.js';

/** Where a photo is. A picture is asked for without our headers, so its address says what workshop it is of. */
export function addressOf(photo: string): string {
  const demo = shownDemo();
  return `/api/photos/${photo}${demo === null ? '' : `?workshop=${demo}`}`;
}
