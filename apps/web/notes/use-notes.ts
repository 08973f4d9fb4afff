import { useQuery } from '@tanstack/react-query';
import { answered, api } from '../api/client.js';
import { useLogQueue } from '../offline/use-log-queue.js';
import { notesOf, type Note } from './notes-of.js';

/** The notes of a run that stand; none while the log is on its way. */
export function useNotes(runId: string): readonly Note[] {
  const queue = useLogQueue();
  const { data = [] } = useQuery({
    queryKey: ['log', runId],
    queryFn: () => answered(api.GET('/api/runs/{id}/log', { params: { path: { id: runId } } })),
  });
  return notesOf(runId, data, queue);
}
