import type { Request } from 'express';
import { z } from 'zod';
import type { Repositories } from '#storage';
import { ApiProblem } from '../problems/api-problem.js';

/** Header that names the workshop a request is about. */
const WORKSHOP_HEADER = 'benchtide-workshop';

/** For the address of what a browser asks for without a header of ours: a stream, a picture. */
export const workshopInAddress = z.strictObject({
  workshop: z.string().max(40).optional().meta({
    description:
      'As the header `Benchtide-Workshop`, which a browser sends neither with a stream nor for a picture',
  }),
});

/** What the header says for the workshop that the key is of; the same as to leave it out. */
const OWN = 'own';

/**
 * The workshop that a request is about: that of its key, or the demo of that, where the request names it by its id in the
 * header, or in the address as `workshop`, since neither a stream of events nor a picture has headers. Each request says so itself, so a page of
 * the demo that is still open never changes the maker's own workshop.
 * @throws ApiProblem 410 where it names any other, such as a demo that was thrown away
 */
export async function wantedWorkshop(
  { workshops }: Pick<Repositories, 'workshops'>,
  ownId: string,
  { headers, query }: Pick<Request, 'headers' | 'query'>,
): Promise<string> {
  const wanted = headers[WORKSHOP_HEADER] ?? query['workshop'] ?? OWN;
  if (wanted === OWN || wanted === ownId) return ownId;
  const demo = await workshops.demoOf(ownId);
  if (demo !== null && wanted === demo.id) return demo.id;
  throw new ApiProblem(410, 'demo-gone', { says: 'demo-gone' });
}
