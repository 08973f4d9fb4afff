import type { ReactNode } from 'react';
import type { Message, MishapResponse } from '#contract';
import type { Schemas } from '../api/client.js';
import { useAmounts } from '../look/amounts.js';
import { Sentences } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { CarryOut } from './carry-out.js';
import { useOddsPair } from './use-odds.js';
import type { Document, WhatIfAnswer } from './use-run.js';

/** Something that is on the chart in place of the plan. */
export interface Tried {
  /** A change, or an answer to a mishap. */
  readonly title: Message | MishapResponse;
  readonly answer: WhatIfAnswer;
  /** What a remedy tells of the plan as of now; absent: the plan itself tells it. */
  readonly effects?: Schemas['RemedyEffects'];
  /** Absent: it is logged, not changed. */
  readonly change?: Schemas['RemedyChange'];
}

/** What is tried, in figures beside what there is. */
export function TriedNote({
  tried,
  before,
  run,
  onStop,
  onDone,
}: {
  readonly tried: Tried;
  readonly before: Document;
  readonly run: Schemas['StoredRun'];
  readonly onStop: () => void;
  readonly onDone: () => void;
}): ReactNode {
  const { remedies: words, conflictNote, mishap } = useWords().run;
  const texts = useTexts();
  const oddsPair = useOddsPair();
  const text = useFigureText();
  const after = tried.answer.plan;
  const figures =
    tried.effects === undefined ? figuresOf(before, run.key) : figuresBefore(tried.effects, run.key);
  const then = figuresOf(after, run.key);
  const [oddsBefore, oddsThen] = oddsPair(figures.odds, then.odds);
  const [was, now] = [text(figures, oddsBefore), text(then, oddsThen)];
  const title = typeof tried.title === 'string' ? mishap.responses[tried.title] : texts.of(tried.title);
  return (
    <section className="note stack tight run-tried" aria-live="polite">
      <h2>{words.showing(title)}</h2>
      {after.status !== 'planned' && (
        <p className="note coral">
          <strong>{conflictNote.title}</strong> <Sentences of={after.conflict} />
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
      <div className="row">
        {tried.change !== undefined && after.status === 'planned' && (
          <CarryOut run={run.id} change={tried.change} title={title} onDone={onDone} />
        )}
        <button type="button" className="button" onClick={onStop}>
          {words.stop}
        </button>
      </div>
    </section>
  );
}

interface Figures {
  readonly odds: number | null;
  readonly ready: string | null;
  readonly pieces: number;
  readonly sittings: number | null;
  readonly benchMin: number | null;
}

/** @param run key; a run that is split has its rest in a second one of the same design */
function figuresOf({ runs, odds, sittings, status }: Document, run: string): Figures {
  const own = runs.find((each) => each.run === run);
  const pieces = runs
    .filter(({ design }) => design === own?.design)
    .reduce((sum, { count }) => sum + count, 0);
  const bench = sittings.reduce(
    (sum, { startAt, endAt }) => sum + Date.parse(endAt) - Date.parse(startAt),
    0,
  );
  const isPlanned = status === 'planned';
  return {
    odds: odds?.soundByTheDay ?? null,
    ready: own?.ready?.likely ?? null,
    pieces,
    sittings: isPlanned ? sittings.length : null,
    benchMin: isPlanned ? bench / 60_000 : null,
  };
}

/** A plan that was made when other runs took other hours is not what a remedy is measured against. */
function figuresBefore(effects: Schemas['RemedyEffects'], run: string): Figures {
  return {
    odds: effects.odds.before,
    ready: effects.runs.find((each) => each.run === run)?.readyAt.before ?? null,
    pieces: effects.pieces.before,
    sittings: effects.sittings.before,
    benchMin: effects.benchMin.before,
  };
}

function useFigureText(): (
  figures: Figures,
  odds: string,
) => { readonly name: string; readonly value: string }[] {
  const { figures: names, none } = useWords().run.remedies;
  const { day, length } = useTimes();
  const { number } = useAmounts();
  return ({ ready, pieces, sittings, benchMin }, odds) => [
    { name: names.odds, value: odds },
    { name: names.ready, value: ready === null ? none : day(ready) },
    { name: names.pieces, value: number(pieces, 0) },
    { name: names.sittings, value: sittings === null ? none : number(sittings, 0) },
    { name: names.bench, value: benchMin === null ? none : length(benchMin) },
  ];
}
