import { useQueries } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { serverNow } from '../api/server-time.js';
import { useTimes } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useLogEntry } from '../offline/use-log-entry.js';
import { useLessonsWords } from './lessons-words.js';
import { forgottenIn, type Forgotten } from './lesson-facts.js';
import { useTitles } from './use-titles.js';

type Run = Schemas['StoredRun'];

/** What teaches nothing any more, to be let teach again. Logs are only read once somebody wants to know. */
export function ForgottenOnes(): ReactNode {
  const lessons = useLessonsWords();
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="forgotten" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{lessons.forgottenOnes}</summary>
      {isOpen && <InAllLogs />}
    </details>
  );
}

function InAllLogs(): ReactNode {
  const lessons = useLessonsWords();
  const runs = useTitles().runs.filter(({ state }) => state !== 'planned');
  const logs = useQueries({
    queries: runs.map(({ id }) => ({
      queryKey: ['log', id],
      queryFn: () => answered(api.GET('/api/runs/{id}/log', { params: { path: { id } } })),
    })),
  });
  const failed = logs.find(({ error }) => error !== null);
  if (failed?.error) return <Failed error={failed.error} again={() => void failed.refetch()} />;
  if (logs.some(({ data }) => data === undefined)) return <Loading />;
  const found = runs.flatMap((run, i) =>
    forgottenIn(logs[i]?.data ?? []).map((forgotten) => ({ run, forgotten })),
  );
  if (found.length === 0) return <p className="soft">{lessons.noneForgotten}</p>;
  return (
    <ul className="entries">
      {found.map(({ run, forgotten }) => (
        <ForgottenEntry key={forgotten.saidBy} run={run} forgotten={forgotten} />
      ))}
    </ul>
  );
}

function ForgottenEntry({ run, forgotten }: { readonly run: Run; readonly forgotten: Forgotten }): ReactNode {
  const lessons = useLessonsWords();
  const times = useTimes();
  const { entryText } = useTitles();
  const log = useLogEntry(run.id);
  const { entry, at } = forgotten.entry;
  const text = `${times.dayTime(at)}: ${entryText(entry, run)}`;
  return (
    <li className="row apart">
      <span className="numbers">
        {lessons.ofRun(run.order.title)}, {text}
      </span>
      <button
        type="button"
        className="button plain"
        aria-label={lessons.teachAgainThis(text)}
        disabled={log.isPending}
        onClick={() =>
          log.mutate({
            kind: 'take-back',
            entry: forgotten.saidBy,
            at: new Date(serverNow()).toISOString(),
          })
        }
      >
        {lessons.teachAgain}
      </button>
      {log.data?.status === 'waiting' && <span className="soft small">{lessons.waiting}</span>}
      {log.error !== null && <Failed error={log.error} again={() => log.reset()} />}
    </li>
  );
}
