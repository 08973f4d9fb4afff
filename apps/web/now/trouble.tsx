import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { answered, api } from '../api/client.js';
import { Sentence, SentenceList } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { BenchRun } from './bench-view.js';

/** A run without a plan: why, and what would help. */
export function Trouble({ bench: { run, document } }: { readonly bench: BenchRun }): ReactNode {
  const { now } = useWords();
  const words = now.trouble;
  const plan = document.runs.find((each) => each.run === run.key);
  const { resolution, conflict, status } = document;
  return (
    <section className="note coral stack tight" aria-labelledby={`trouble-${run.id}`}>
      <h2 id={`trouble-${run.id}`}>{words.title(plan?.title ?? run.order.title)}</h2>
      {status === 'undecided' && <p>{words.undecided}</p>}
      <SentenceList of={conflict} />
      {resolution?.timing && (
        <p>
          <Sentence of={resolution.timing} />
        </p>
      )}
      {resolution !== undefined && resolution.relaxations.length > 0 && (
        <>
          <p>{words.relaxations}</p>
          <SentenceList of={resolution.relaxations} />
        </>
      )}
      <NearestRemedy runId={run.id} />
      {plan?.stages.some((stage) => stage.status === 'planned') === true && (
        <p className="small">{words.keeps}</p>
      )}
      <p>
        <Link className="button" to={`/runs/${run.id}`}>
          {words.toRun}
        </Link>
      </p>
    </section>
  );
}

function NearestRemedy({ runId }: { readonly runId: string }): ReactNode {
  const { now } = useWords();
  const words = now.trouble;
  const texts = useTexts();
  const { data, error } = useQuery({
    queryKey: ['remedies', runId],
    queryFn: () => answered(api.GET('/api/runs/{id}/remedies', { params: { path: { id: runId } } })),
    // The planner tries dozens of plans for this.
    staleTime: 5 * 60_000,
    retry: false,
  });
  if (error !== null) return <p className="small">{words.unknown}</p>;
  const [first] = data?.remedies ?? [];
  return (
    <div>
      <h3>{words.remedy}</h3>
      {data === undefined ? (
        <p role="status">{words.looking}</p>
      ) : first === undefined ? (
        <p>{words.none}</p>
      ) : (
        <>
          <p>
            <strong>
              <Sentence of={first.title} />
            </strong>
          </p>
          <p>{first.does.map((gain) => texts.of(gain)).join(' ')}</p>
          {first.worse.map((loss) => (
            <p key={JSON.stringify(loss)} className="small">
              <Sentence of={loss} />
            </p>
          ))}
        </>
      )}
    </div>
  );
}
