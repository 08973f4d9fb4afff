import { Printer } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { Sentence } from '../look/sentence.js';
import { StagePieces } from '../look/stage-pieces.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { BatchWeights } from './batch-weights.js';
import { LabelLists } from './label-lists.js';
import { PartWeights } from './part-weights.js';
import type { RunProps } from './run-props.js';
import './sheet.css';
import { sheetCards, type SheetCard } from './sheet-cards.js';
import { useSheet, type BatchToMix, type PartAmounts } from './use-sheet.js';
import type { RunPlan } from './use-run.js';

/** What lies beside the bowl: each batch with what to weigh, its stages with their windows, and room to write. */
export default function BenchSheet({ run, plan }: RunProps): ReactNode {
  const { sheet: words } = useWords().run;
  const { dayTime } = useTimes();
  const [layout, setLayout] = useState<'onePage' | 'compact'>('onePage');
  const { data, error, refetch } = useSheet(run.id);
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  const own = plan.document.runs.find((each) => each.run === run.key);
  const stages = own?.stages ?? [];
  // A copy that was kept for when there is no connection may be older than the lists.
  const { labels = [] }: Partial<NonNullable<(typeof data.runs)[0]>> = data.runs[0] ?? {};
  const parts = inOrder(data.runs[0]?.amounts ?? [], stages);
  return (
    <div className={`stack sheet ${layout}`}>
      <div className="row sheet-tools">
        <fieldset className="row">
          <legend className="visually-hidden">{words.layout}</legend>
          {(['onePage', 'compact'] as const).map((each) => (
            <label key={each} className="row">
              <input type="radio" name="layout" checked={layout === each} onChange={() => setLayout(each)} />
              {words[each]}
            </label>
          ))}
        </fieldset>
        <button type="button" className="button main" onClick={() => print()}>
          <Printer size={20} aria-hidden />
          {words.print}
        </button>
      </div>
      <p className="small soft">{words.made(dayTime(plan.madeAt))}</p>
      {own?.cautions.map((caution) => (
        <p key={caution.code} className="note coral">
          <Sentence of={caution} />
        </p>
      ))}
      {sheetCards(parts, data.runs[0]?.batches ?? []).map((card) =>
        'shared' in card ? (
          <BatchSheet
            key={`batch ${card.shared.parts.join(' ')}`}
            batch={card.shared}
            run={run.order.title}
            parts={new Map(parts.map(({ part, title }) => [part, title]))}
          />
        ) : (
          <PartSheet
            key={card.part.part}
            card={card}
            run={run.order.title}
            groups={own?.groups}
            stages={stages.filter((stage) => stage.part === card.part.part)}
            label={labels.find(({ part }) => part === card.part.part)}
          />
        ),
      )}
    </div>
  );
}

/** Parts in the order in which their first stage comes. */
function inOrder(parts: readonly PartAmounts[], stages: RunPlan['stages']): PartAmounts[] {
  const place = (part: PartAmounts): number => {
    const found = stages.findIndex((stage) => stage.part === part.part);
    return found < 0 ? stages.length : found;
  };
  return [...parts].sort((a, b) => place(a) - place(b));
}

/** What several parts are poured from. */
function BatchSheet({
  batch,
  run,
  parts,
}: {
  readonly batch: BatchToMix;
  readonly run: string;
  readonly parts: ReadonlyMap<string, string>;
}): ReactNode {
  const { sheet: words } = useWords().run;
  const { and } = useTexts();
  return (
    <article className="card stack tight sheet-part">
      <header>
        <p className="small soft">{run}</p>
        <h2>{batch.title}</h2>
        <p>{words.batchFor(and(batch.parts.map((key) => parts.get(key) ?? key)))}</p>
      </header>
      <h3>{words.weigh}</h3>
      <div className="sheet-weigh stack tight">
        <BatchWeights batch={batch} parts={parts} boxes />
      </div>
      <h3>{words.notes}</h3>
      <div className="sheet-lines" aria-hidden />
    </article>
  );
}

function PartSheet({
  card,
  run,
  groups,
  stages,
  label,
}: {
  readonly card: Extract<SheetCard, { readonly part: PartAmounts }>;
  readonly run: string;
  readonly groups: RunPlan['groups'];
  readonly stages: RunPlan['stages'];
  readonly label: Schemas['PartLabel'] | undefined;
}): ReactNode {
  const { sheet: words } = useWords().run;
  const { dayTime } = useTimes();
  const [first] = stages;
  const { part, told } = card;
  const shown = new Set([...told, ...part.cautions].map(({ code }) => code));
  return (
    <article className="card stack tight sheet-part">
      <header>
        <p className="small soft">{run}</p>
        <h2>{part.title}</h2>
        <p>
          {words.pieces(part.count)} ·{' '}
          {first === undefined ? words.unplanned : words.start(dayTime(first.startAt))}
        </p>
      </header>
      <h3>{words.weigh}</h3>
      <div className="sheet-weigh stack tight">
        <PartWeights {...card} boxes />
      </div>
      {stages.length > 0 && <Steps stages={stages} groups={groups} shown={shown} />}
      {label !== undefined && <LabelLists label={label} />}
      <h3>{words.notes}</h3>
      <div className="sheet-lines" aria-hidden />
    </article>
  );
}

function Steps({
  stages,
  groups,
  shown,
}: {
  readonly stages: RunPlan['stages'];
  readonly groups: RunPlan['groups'];
  readonly shown: ReadonlySet<string>;
}): ReactNode {
  const { sheet: words } = useWords().run;
  const { tide } = useWords();
  const { dayTime } = useTimes();
  return (
    <>
      <h3>{words.steps}</h3>
      <ol className="sheet-steps">
        {stages.map((stage) => (
          <li key={`${stage.key} ${String(stage.attempt)}`}>
            <span className="run-box" aria-hidden />
            <div>
              <strong>{stage.title}</strong>
              <StagePieces stage={stage} all={groups} />, {dayTime(stage.startAt)}
              {stage.status === 'planned' ? (
                <span className="soft">
                  {' '}
                  ({words.opens} {dayTime(stage.opensAt)}
                  {stage.lastCallAt !== null && `, ${words.lastCall} ${dayTime(stage.lastCallAt)}`})
                </span>
              ) : (
                <span className="soft"> · {tide.status[stage.status]}</span>
              )}
              {stage.cautions
                .filter(({ code }) => !shown.has(code))
                .map((caution) => (
                  <p key={caution.code} className="note amber small">
                    <Sentence of={caution} />
                  </p>
                ))}
            </div>
            <span className="sheet-done soft small">{words.doneAt}</span>
          </li>
        ))}
      </ol>
    </>
  );
}
