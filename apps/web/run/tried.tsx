import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { useOdds } from './use-odds.js';
import type { Document, WhatIfAnswer } from './use-run.js';

/** Something that is on the chart in place of the plan. */
export interface Tried {
  readonly title: string;
  readonly answer: WhatIfAnswer;
}

/** What is tried, in figures beside what there is. */
export function TriedNote({
  tried,
  before,
  run,
  onStop,
}: {
  readonly tried: Tried;
  readonly before: Document;
  readonly run: Schemas['StoredRun'];
  readonly onStop: () => void;
}): ReactNode {
  const { remedies: words, clash } = useWords().run;
  const figures = useFigures(run.key);
  const after = tried.answer.plan;
  const [was, now] = [figures(before), figures(after)];
  return (
    <section className="note stack tight run-tried" aria-live="polite">
      <h2>{words.showing(tried.title)}</h2>
      {after.status !== 'planned' && (
        <p className="note coral">
          <strong>{clash.title}</strong> {after.conflict.map(({ text }) => text).join(' ')}
        </p>
      )}
      <table className="run-figures">
        <thead>
          <tr>
            <td />
            <th scope="col">{words.before}</th>
            <th scope="col">{words.after}</th>
          </tr>
        </thead>
        <tbody>
          {now.map(({ name, value }, i) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="numbers">{was[i]?.value}</td>
              <td className="numbers">
                <strong>{value}</strong>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <button type="button" className="button" onClick={onStop}>
          {words.stop}
        </button>
      </p>
    </section>
  );
}

function useFigures(
  run: string,
): (document: Document) => { readonly name: string; readonly value: string }[] {
  const { figures, none } = useWords().run.remedies;
  const { day, length } = useTimes();
  const odds = useOdds();
  return (document) => {
    const own = document.runs.find((each) => each.run === run);
    const design = document.runs.filter((each) => each.design === own?.design);
    const bench = document.sittings.reduce(
      (sum, { startAt, endAt }) => sum + Date.parse(endAt) - Date.parse(startAt),
      0,
    );
    const planned = document.status === 'planned';
    return [
      { name: figures.odds, value: document.odds === null ? none : odds.percent(document.odds) },
      { name: figures.ready, value: own?.ready ? day(own.ready.likely) : none },
      // A run that is split has its rest in a second one of the same design.
      { name: figures.pieces, value: String(design.reduce((sum, { count }) => sum + count, 0)) },
      { name: figures.sittings, value: planned ? String(document.sittings.length) : none },
      { name: figures.bench, value: planned ? length(bench / 60_000) : none },
    ];
  };
}
