import { useId, type ReactNode } from 'react';
import { Sentences } from '../look/sentence.js';
import { StagePieces } from '../look/stage-pieces.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import './tide-table.css';
import { COLOURS } from './ribbons.js';
import { useStageWords } from './stage-words.js';
import type { TideMark, TideRun } from './tide-run.js';

/** The tide chart as text: for every stage *opens*, *best*, *last call*, *why*. */
export function TideTable({
  tide,
  before,
}: {
  readonly tide: TideRun;
  /** The plan before; absent: nothing is compared. */
  readonly before?: TideRun | undefined;
}): ReactNode {
  const id = useId();
  const { tide: words } = useWords();
  const left = before?.marks.filter((was) => !tide.marks.some((mark) => mark.id === was.id)) ?? [];
  return (
    <section className="stack tight" aria-labelledby={id}>
      <h2 id={id}>{words.table}</h2>
      <table className="tide-table" role="table" aria-labelledby={id}>
        <thead role="rowgroup">
          <tr role="row">
            {[words.number, words.stage, words.opens, words.best, words.lastCall, words.why].map((name) => (
              <th key={name} role="columnheader" scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {tide.marks.map((mark) => (
            <Row
              key={mark.id}
              mark={mark}
              groups={tide.groups}
              was={before?.marks.find((each) => each.id === mark.id)}
              compared={before !== undefined}
            />
          ))}
          {left.map(({ id: key, stage }) => (
            <tr key={key} role="row" className="gone">
              <td role="cell" />
              <th role="rowheader" scope="row">
                <del>{stage.title}</del>
              </th>
              <td role="cell" colSpan={4}>
                {words.gone}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({
  mark,
  groups,
  was,
  compared,
}: {
  readonly mark: TideMark;
  readonly groups: TideRun['groups'];
  readonly was: TideMark | undefined;
  readonly compared: boolean;
}): ReactNode {
  const { tide: words } = useWords();
  const { dayTime } = useTimes();
  const told = useStageWords();
  const { stage, number, row } = mark;
  const planned = stage.status === 'planned';
  return (
    <tr role="row" id={rowId(mark.id)} className={stage.status} tabIndex={-1}>
      <td role="cell" className="numbers">
        <span className={`tide-number tide-colour-${String((row % COLOURS) + 1)}`}>{number}</span>
      </td>
      <th role="rowheader" scope="row">
        {stage.title}
        <StagePieces stage={stage} all={groups} />
        {!planned && <span className="soft"> · {words.status[stage.status]}</span>}
        {compared && was === undefined && <span className="soft"> · {words.added}</span>}
      </th>
      <td role="cell" data-label={words.opens}>
        {planned ? dayTime(stage.opensAt) : dayTime(stage.startAt)}
      </td>
      <td role="cell" data-label={words.best}>
        {planned && <strong>{dayTime(stage.bestAt)}</strong>}
        {was !== undefined && was.at !== mark.at && (
          <span className="was small">{words.was(dayTime(was.at))}</span>
        )}
      </td>
      <td role="cell" data-label={words.lastCall}>
        {planned && told.lastCall(stage)}
      </td>
      <td role="cell" data-label={words.why} className="why small">
        <Sentences of={stage.why} />
        {planned && stage.surelyOpenAt !== null && (
          <span className="soft">
            {' '}
            {words.surely}: {told.surely(stage)}.
          </span>
        )}
      </td>
    </tr>
  );
}

/** The id of a stage's row on the page. */
export function rowId(mark: string): string {
  return `stage-${mark.replace('#', '-')}`;
}
