import { Printer } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { Sentence } from '../look/sentence.js';
import { StagePieces } from '../look/stage-pieces.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { BatchWeights } from './batch-weights.js';
import { NoteList } from '../notes/note-list.js';
import { useNotes } from '../notes/use-notes.js';
import { WriteNote } from '../notes/write-note.js';
import type { Note } from '../notes/notes-of.js';
import { RefusedEntries } from '../offline/refused-entries.js';
import { LabelLists } from './label-lists.js';
import { PartWeights } from './part-weights.js';
import type { RunProps } from './run-props.js';
import './sheet.css';
import { sheetCards, type SheetCard } from './sheet-cards.js';
import { cautionsOnce, sheetSittings, type SheetSitting, type SheetWeigh } from './sheet-sittings.js';
import { useSheet } from './use-sheet.js';
import type { RunPlan } from './use-run.js';

/** What lies beside the bowl: each sitting in the order of doing, with what to weigh, the windows, and room to write. */
export default function BenchSheet({ run, plan }: RunProps): ReactNode {
  const { sheet: words } = useWords().run;
  const { dayTime } = useTimes();
  const [layout, setLayout] = useState<'onePage' | 'compact'>('onePage');
  const notes = useNotes(run.id);
  const { data, error, refetch } = useSheet(run.id);
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  const own = plan.document.runs.find((each) => each.run === run.key);
  // A copy that was kept for when there is no connection may be older than the lists.
  const { labels = [] }: Partial<NonNullable<(typeof data.runs)[0]>> = data.runs[0] ?? {};
  const parts = data.runs[0]?.amounts ?? [];
  const cards = sheetCards(parts, data.runs[0]?.batches ?? []);
  const sittings = sheetSittings(own?.stages ?? [], plan.document.sittings, cards);
  const told = new Set(
    sittings.flatMap(({ stages }) => stages.flatMap(({ weigh }) => weigh)).map(({ card }) => card),
  );
  const general = generalNotes(notes, sittings);
  const unplanned = cards.filter((card) => !told.has(card));
  const titles = new Map(parts.map(({ part, title }) => [part, title]));
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
      {sittings.map((sitting, i) => (
        <SittingSheet
          key={sitting.from}
          {...{ sitting, titles, notes, run }}
          general={general[i] ?? []}
          groups={own?.groups}
        />
      ))}
      {unplanned.length > 0 && (
        <article className="card stack tight sheet-part">
          <h2>{words.unplanned}</h2>
          {unplanned.map((card) => (
            <Weigh key={nameOf(card)} card={card} titles={titles} />
          ))}
        </article>
      )}
      {labels.map((label) => (
        <article key={label.part} className="card stack tight sheet-part">
          <h2>{titles.get(label.part)}</h2>
          <LabelLists label={label} />
        </article>
      ))}
    </div>
  );
}

function SittingSheet({
  sitting: { from, to, stages },
  run,
  groups,
  titles,
  notes,
  general,
}: {
  readonly sitting: SheetSitting;
  readonly run: RunProps['run'];
  readonly notes: readonly Note[];
  /** Those about no stage or entry. */
  readonly general: readonly Note[];
  readonly groups: RunPlan['groups'];
  readonly titles: ReadonlyMap<string, string>;
}): ReactNode {
  const { sheet: words } = useWords().run;
  const { dayTime, time } = useTimes();
  const cautions = cautionsOnce(stages);
  return (
    <article className="card stack tight sheet-part">
      <header>
        <p className="small soft">{run.order.title}</p>
        <h2>{words.sitting(dayTime(from), time(to))}</h2>
      </header>
      <ol className="sheet-steps">
        {stages.map(({ stage, weigh }, i) => {
          const { above, own } = cautions[i] ?? { above: undefined, own: stage.cautions };
          return (
            <Step key={`${stage.key} ${String(stage.attempt)}`} {...{ stage, groups }} cautions={own}>
              {weigh.map(({ card, kinds }) => (
                <Weigh key={nameOf(card)} {...{ card, kinds, titles, above }} />
              ))}
              <RefusedEntries run={run.id} stage={stage.key} />
              <NoteList run={run.id} notes={notes.filter(({ entry }) => entry.stage === stage.key)} />
              <WriteNote run={run.id} of={{ stage: stage.key }} what={stage.title} />
            </Step>
          );
        })}
      </ol>
      <h3>{words.notes}</h3>
      <NoteList run={run.id} notes={general} />
      <WriteNote run={run.id} what={words.sitting(dayTime(from), time(to))} />
      <div className="sheet-lines" aria-hidden />
    </article>
  );
}

/** Notes about the run, by the sitting in which they were written, or that came before. */
function generalNotes(notes: readonly Note[], sittings: readonly SheetSitting[]): Note[][] {
  const by: Note[][] = sittings.map(() => []);
  for (const note of notes) {
    const { stage, about, at } = note.entry;
    if (stage !== undefined || about !== undefined) continue;
    const place = sittings.findLastIndex(({ from }) => from <= Date.parse(at));
    by[Math.max(0, place)]?.push(note);
  }
  return by;
}

function Step({
  stage,
  groups,
  cautions,
  children,
}: {
  readonly stage: RunPlan['stages'][number];
  readonly groups: RunPlan['groups'];
  readonly cautions: RunPlan['stages'][number]['cautions'];
  readonly children: ReactNode;
}): ReactNode {
  const { sheet: words } = useWords().run;
  const { tide } = useWords();
  const { dayTime, time } = useTimes();
  return (
    <li>
      <span className="run-box" aria-hidden />
      <div className="stack tight">
        <p>
          <strong>{stage.title}</strong>
          <StagePieces stage={stage} all={groups} />, {time(stage.startAt)}
          {stage.status === 'planned' ? (
            <span className="soft">
              {' '}
              ({words.opens} {dayTime(stage.opensAt)}
              {stage.lastCallAt !== null && `, ${words.lastCall} ${dayTime(stage.lastCallAt)}`})
            </span>
          ) : (
            <span className="soft"> · {tide.status[stage.status]}</span>
          )}
        </p>
        {cautions.map((caution) => (
          <p key={caution.code} className="note amber small">
            <Sentence of={caution} />
          </p>
        ))}
        {children}
      </div>
      <span className="sheet-done soft small">{words.doneAt}</span>
    </li>
  );
}

/** What is weighed of a batch or part, with what it is for. */
function Weigh({
  card,
  kinds,
  titles,
  above,
}: {
  readonly card: SheetCard;
  readonly kinds?: SheetWeigh['kinds'];
  readonly above?: ReadonlySet<string> | undefined;
  readonly titles: ReadonlyMap<string, string>;
}): ReactNode {
  const { sheet: words } = useWords().run;
  const { and } = useTexts();
  return (
    <section className="sheet-weigh stack tight">
      <h3>
        {'shared' in card ? card.shared.title : card.part.title}{' '}
        <span className="soft small">
          {'shared' in card
            ? words.batchFor(and(card.shared.parts.map((key) => titles.get(key) ?? key)))
            : words.pieces(card.part.count)}
        </span>
      </h3>
      {'shared' in card ? (
        <BatchWeights
          batch={card.shared}
          parts={titles}
          kinds={kinds}
          {...(above !== undefined && { above })}
          boxes
        />
      ) : (
        <PartWeights
          {...card}
          {...(kinds !== undefined && { kinds })}
          {...(above !== undefined && { above })}
          boxes
        />
      )}
    </section>
  );
}

const nameOf = (card: SheetCard): string =>
  'shared' in card ? `batch ${card.shared.parts.join(' ')}` : card.part.part;
