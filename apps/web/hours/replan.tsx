import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { answered, api, type Schemas } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { useWords } from '../words/words.js';
import { useOpenRuns, type OpenRun } from './use-sittings.js';

/** One run and its new plan; null: it could not be made. */
interface Replanned {
  readonly run: OpenRun;
  readonly plan: Schemas['PlanRevision'] | null;
}

/** Says that plans stay as they are, and makes them anew for those who want it: one after the other, as they share hours. */
export function Replan(): ReactNode {
  const { hours } = useWords();
  const { runs } = useOpenRuns();
  const queries = useQueryClient();
  const call = useMutation({
    mutationFn: async (open: readonly OpenRun[]) => {
      const done: Replanned[] = [];
      for (const run of open) {
        const params = { path: { id: run.id }, header: { 'Idempotency-Key': newId() } };
        const plan = await answered(api.POST('/api/runs/{id}/plan', { params, body: {} })).catch(() => null);
        done.push({ run, plan });
      }
      return done;
    },
    onSuccess: (done) =>
      Promise.all(
        done.flatMap(({ run }) =>
          ['plan', 'plans', 'tide', 'odds'].map((name) =>
            queries.invalidateQueries({ queryKey: [name, run.id] }),
          ),
        ),
      ),
  });
  return (
    <div className="note stack tight" role="status">
      <p>{hours.saved}</p>
      {runs?.length === 0 && <p>{hours.noRuns}</p>}
      {runs !== undefined && runs.length > 0 && call.data === undefined && (
        <p>
          <button
            type="button"
            className="button"
            disabled={call.isPending}
            onClick={() => call.mutate(runs)}
          >
            {call.isPending ? hours.replanning : hours.replan}
          </button>
        </p>
      )}
      {call.data !== undefined && (
        <ul>
          {call.data.map(({ run, plan }) => (
            <li key={run.id}>
              {plan === null
                ? hours.replanFailed(run.order.title)
                : plan.status === 'planned'
                  ? hours.replanned(run.order.title, plan.changes.length)
                  : hours.replanNone(run.order.title)}{' '}
              <Link to={`/runs/${run.id}`}>{hours.toRun}</Link>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
