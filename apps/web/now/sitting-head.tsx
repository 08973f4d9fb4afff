import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { useThings } from '../library/shelf-calls.js';
import { useTexts } from '../look/use-texts.js';
import { useNow, useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { isAhead, isGoingOn, type BenchRun, type BenchSitting } from './bench-view.js';
import { runsOf } from './sitting-facts.js';

/** When a sitting is, how much there is to do, and for which runs. */
export function SittingHead({
  id,
  sitting,
  runs,
}: {
  readonly id: string;
  readonly sitting: BenchSitting;
  readonly runs: readonly BenchRun[];
}): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const { duration } = useTexts();
  const { startAt, endAt, stages } = sitting;
  const present = useNow(10_000);
  const day = times.day(startAt);
  const open = stages.filter(({ state }) => state === 'open').length;
  return (
    <header className="stack tight sitting-head">
      {isAhead(sitting, present) ? (
        <div>
          <p className="soft small">{now.nextUp}</p>
          <h2 id={id}>{now.plan.what(times.dayTime(startAt), duration((endAt - startAt) / 60_000), open)}</h2>
        </div>
      ) : (
        <div className="row apart">
          <h2 id={id}>
            {isGoingOn(sitting, present) ? now.current : present < startAt ? now.next(day) : now.late(day)}
          </h2>
          <p className="soft numbers">{now.between(times.time(startAt), times.time(endAt))}</p>
        </div>
      )}
      <SittingRuns sitting={sitting} runs={runs} />
    </header>
  );
}

function SittingRuns({
  sitting,
  runs,
}: {
  readonly sitting: BenchSitting;
  readonly runs: readonly BenchRun[];
}): ReactNode {
  const { run: words } = useWords();
  const { data: moulds = [] } = useThings('moulds');
  const titleOf = (key: string): string[] =>
    moulds.flatMap(({ content }) => (content.key === key ? [content.title] : []));
  return (
    <ul className="sitting-runs">
      {runsOf(sitting, runs).map(({ id, title, count, moulds: keys }) => (
        <li key={id}>
          <Link to={`/runs/${id}`}>{title}</Link>
          <span className="numbers">
            {[words.pieces(count), ...keys.flatMap(titleOf)].map((fact) => ` · ${fact}`).join('')}
          </span>
        </li>
      ))}
    </ul>
  );
}
