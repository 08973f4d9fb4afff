import { allPages } from './all-pages.js';
import { answered, api, type Schemas } from './client.js';

/** As many as the API gives at once, at most. */
const PAGE = 200;

/** All runs, oldest first. */
export function allRuns(): Promise<Schemas['StoredRun'][]> {
  return allPages(PAGE, (before) => {
    const query = { most: PAGE, ...(before !== undefined && { before }) };
    return answered(api.GET('/api/runs', { params: { query } }));
  });
}

/** Runs of which stages are still to be done: some, so one page holds them all. */
export const liveRuns = {
  queryKey: ['runs', 'live'],
  queryFn: () => answered(api.GET('/api/runs', { params: { query: { state: 'live' } } })),
} as const;
