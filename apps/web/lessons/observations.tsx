import { useQueries } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { serverNow } from '../api/server-time.js';
import { useAmounts } from '../look/amounts.js';
import { useTimes } from '../look/times.js';
import { Confirm } from '../shell/confirm.js';
import { Failed } from '../shell/states.js';
import { useLogEntry } from '../offline/use-log-entry.js';
import { useLessonsWords } from './lessons-words.js';
import { placeOf, type Lesson } from './lesson-facts.js';
import type { JustForgotten } from './undo-note.js';
import { useTitles } from './use-titles.js';

type Observation = Lesson['observations'][number];
type LoggedEntry = Schemas['LoggedEntry'];

/** The batches that a lesson rests on, each with the entries of the log that tell of it. */
export function Observations({
  observations,
  onForgotten,
}: {
  readonly observations: readonly Observation[];
  readonly onForgotten: (forgotten: JustForgotten) => void;
}): ReactNode {
  const lessons = useLessonsWords();
  const { runOf, recipeTitle } = useTitles();
  const places = observations.flatMap(({ entries }) => entries.map(placeOf));
  const runs = [...new Set(places.map(({ run }) => run))].flatMap((key) => runOf(key) ?? []);
  const logs = useQueries({
    queries: runs.map(({ id }) => ({
      queryKey: ['log', id],
      queryFn: () => answered(api.GET('/api/runs/{id}/log', { params: { path: { id } } })),
    })),
  });
  const entries = new Map(logs.flatMap(({ data }) => data ?? []).map((each) => [each.id, each]));
  return (
    <ul className="observations">
      {observations.map((observation) => {
        const own = observation.entries.map(placeOf);
        const run = runOf(own[0]?.run ?? '');
        return (
          <li key={`${observation.entries.join(' ')} ${observation.recipe}`} className="stack tight">
            <p>
              <strong>{recipeTitle(observation.recipe)}</strong>
              {', '}
              {lessons.ofRun(run?.order.title ?? own[0]?.run ?? '')}
              {': '}
              <Came observation={observation} />
            </p>
            <ul className="entries">
              {own.map(({ entry }) => {
                const logged = entries.get(entry);
                return (
                  logged !== undefined &&
                  run !== undefined && (
                    <TeachingEntry key={entry} run={run} logged={logged} onForgotten={onForgotten} />
                  )
                );
              })}
            </ul>
          </li>
        );
      })}
    </ul>
  );
}

/** Where the batch stood against its forecast. */
function Came({ observation: { exact, above, below } }: { readonly observation: Observation }): ReactNode {
  const lessons = useLessonsWords();
  const { share } = useAmounts();
  const whole = (factor: number): string => share(Math.round(factor * 100) / 100);
  return [
    ...(exact === undefined ? [] : [lessons.came(whole(exact))]),
    ...(above === undefined ? [] : [lessons.notYetAt(whole(above))]),
    ...(below === undefined ? [] : [lessons.alreadyAt(whole(below))]),
  ].join(lessons.and);
}

function TeachingEntry({
  run,
  logged,
  onForgotten,
}: {
  readonly run: Schemas['StoredRun'];
  readonly logged: LoggedEntry;
  readonly onForgotten: (forgotten: JustForgotten) => void;
}): ReactNode {
  const lessons = useLessonsWords();
  const times = useTimes();
  const { entryText } = useTitles();
  const log = useLogEntry(run.id);
  const text = `${times.dayTime(logged.at)}: ${entryText(logged.entry, run)}`;
  const forget = (): void =>
    log.mutate(
      { kind: 'forget', entry: logged.id, at: new Date(serverNow()).toISOString() },
      {
        onSuccess: (outcome) => {
          if (outcome.status === 'sent') {
            onForgotten({ runId: run.id, forgetId: outcome.answer.entry.id, text });
          }
        },
      },
    );
  return (
    <li className="row apart">
      <span className="numbers">{text}</span>
      {log.data?.status === 'waiting' ? (
        <span className="soft small">{lessons.waiting}</span>
      ) : (
        <Confirm
          label={lessons.forget}
          name={lessons.forgetThis(text)}
          ask={lessons.forgetAsk}
          yes={lessons.forgetYes}
          no={lessons.keep}
          className="button plain"
          busy={log.isPending}
          onYes={forget}
        />
      )}
      {log.error !== null && <Failed error={log.error} again={() => log.reset()} />}
    </li>
  );
}
