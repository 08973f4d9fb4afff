import { useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { answered, api } from '../api/client.js';
import { Failed, Loading } from '../shell/states.js';
import { useLessonsWords } from './lessons-words.js';
import { EmptyLessons } from './empty-lessons.js';
import { ForgottenOnes } from './forgotten-ones.js';
import { ForecastRecord } from './forecast-record.js';
import { byPace, factorRange } from './lesson-facts.js';
import { PaceCard } from './pace-card.js';
import { UndoNote, type JustForgotten } from './undo-note.js';
import './lessons.css';

/** What the bench log has taught the clocks about this workshop. */
export default function LessonsPage(): ReactNode {
  const lessons = useLessonsWords();
  const [forgotten, setForgotten] = useState<JustForgotten | null>(null);
  const { data, error, refetch } = useQuery({
    queryKey: ['lessons'],
    queryFn: () => answered(api.GET('/api/lessons')),
  });
  const groups = byPace(data?.lessons ?? []);
  const onlyDone = data?.onlyDone ?? [];
  return (
    <div className="lessons stack">
      <h1>{lessons.title}</h1>
      {forgotten !== null && <UndoNote key={forgotten.forgetId} forgotten={forgotten} />}
      {data === undefined ? (
        error === null ? (
          <Loading />
        ) : (
          <Failed error={error} again={() => void refetch()} />
        )
      ) : (
        <>
          {data.record !== undefined && <ForecastRecord record={data.record} />}
          {groups.length === 0 ? (
            <EmptyLessons />
          ) : (
            <>
              <p className="soft">{lessons.intro}</p>
              {groups.map((group) => (
                <PaceCard
                  key={group.pace}
                  group={group}
                  range={factorRange(data.lessons)}
                  onForgotten={setForgotten}
                />
              ))}
            </>
          )}
          {onlyDone.map(({ pace, batches }) => (
            <section key={pace} className="card stack pace" aria-labelledby={`only-done-${pace}`}>
              <h2 id={`only-done-${pace}`}>{lessons.paces[pace]}</h2>
              <p>{lessons.onlyDone(batches)}</p>
              <p className="soft">{lessons.onlyDoneHow}</p>
            </section>
          ))}
          <ForgottenOnes />
        </>
      )}
    </div>
  );
}
