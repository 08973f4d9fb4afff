import { useMemo, useState, type ReactNode } from 'react';
import { useLocation } from 'react-router';
import { useNow } from '../look/times.js';
import { AddedNote } from '../plan/added-note.js';
import { useTimeZone } from '../session/session.js';
import { openStretches } from '../look/local-days.js';
import TideChart from '../tide/tide-chart.js';
import { tideRun, type TideRun } from '../tide/tide-run.js';
import { TideTable } from '../tide/tide-table.js';
import { useWords } from '../words/words.js';
import { Conflict } from './conflict.js';
import { Holds } from './holds.js';
import { MovingPanel } from './moving-panel.js';
import { Remedies } from './remedies.js';
import type { RunProps } from './run-props.js';
import { StageDetails } from './stage-details.js';
import { TriedNote, type Tried } from './tried.js';
import { useMoving } from './use-moving.js';
import { useOdds } from './use-odds.js';
import { useClocks, useWorkshop, type Document } from './use-run.js';
import { WeakLinks } from './weak-links.js';

/** Does this plan hold: chart and table, odds with weak links, and what would help. */
export default function PlanView({ run, plan }: RunProps): ReactNode {
  const { run: words, tide: tideWords } = useWords();
  const [carried, setCarried] = useState(false);
  const state = useLocation().state as { readonly tried?: Tried } | null;
  const [tried, setTried] = useState<Tried | undefined>(state?.tried);
  const show = (next: Tried | undefined): void => {
    setTried(next);
    if (next !== undefined) setCarried(false);
  };
  const tide = useTide(plan.document, run.id, run.key);
  const other = useTide(tried?.answer.plan, run.id, run.key, true);
  const moving = useMoving(run, plan.document, tide);
  const put = useTide(moving.answer?.plan, run.id, run.key, true);
  const document = tried?.answer.plan ?? plan.document;
  const isOpen = run.state === 'planned' || run.state === 'making';
  const shown = other ?? put ?? tide;
  return (
    <div className="stack">
      {plan.document.status !== 'planned' && <Conflict document={plan.document} />}
      {tried !== undefined && (
        <TriedNote
          tried={tried}
          before={plan.document}
          run={run}
          onStop={() => show(undefined)}
          onDone={() => {
            setCarried(true);
            show(undefined);
          }}
        />
      )}
      <p role="status" className={carried || moving.isKept ? 'note' : 'visually-hidden'}>
        {carried && words.remedies.carried}
        {moving.isKept && tideWords.moving.kept}
      </p>
      <Holds document={document} run={run.key} />
      {shown !== undefined && (
        <>
          <Chart
            key={JSON.stringify(tried?.title)}
            tide={shown}
            before={shown === tide ? undefined : tide}
            moving={tried === undefined && isOpen ? moving : undefined}
          />
          <TideTable tide={shown} before={shown === tide ? undefined : tide} />
        </>
      )}
      <AddedNote run={document.runs.find((each) => each.run === run.key)} />
      <WeakLinks document={document} run={run.key} />
      {isOpen && (
        <Remedies
          run={run}
          document={plan.document}
          tried={tried}
          onTry={show}
          title={words.remedies.title}
        />
      )}
    </div>
  );
}

/** @param tried its clocks are those of the plan, as nothing else knows what a change does to them */
function useTide(
  document: Document | undefined,
  id: string,
  key: string,
  tried = false,
): TideRun | undefined {
  const { data } = useClocks(id);
  const now = useNow(60_000);
  return useMemo(() => {
    const own = document?.runs.find(({ run }) => run === key);
    if (document === undefined || own === undefined) return undefined;
    const all = data?.runs.find(({ run }) => run === key)?.parts.flatMap(({ clocks }) => clocks);
    return tideRun(document, key, tried ? own.clocks : (all ?? own.clocks), now);
  }, [document, data, key, now, tried]);
}

function Chart({
  tide,
  before,
  moving,
}: {
  readonly tide: TideRun;
  readonly before: TideRun | undefined;
  readonly moving: ReturnType<typeof useMoving> | undefined;
}): ReactNode {
  const zone = useTimeZone();
  const now = useNow(60_000);
  const { data: workshop } = useWorkshop();
  const [selected, setSelected] = useState<string>();
  const { from, to } = tide.whole;
  const hours = useMemo(() => {
    if (workshop === undefined) return [];
    const { hours: told, timeZone } = workshop.facts;
    return openStretches(told, timeZone, { from, to });
  }, [workshop, from, to]);
  const mark = tide.marks.find(({ id }) => id === selected);
  const odds = useOdds();
  const isTold = moving?.error === undefined && moving?.refusal.length === 0;
  const said = isTold && moving.answer !== undefined ? odds(moving.answer.plan.odds) : '';
  const held = moving?.held && { ...moving.held, text: moving.isTrying ? '…' : said };
  return (
    <TideChart
      {...{ tide, before, hours, zone, now, selected, held }}
      onSelect={(id) => setSelected(id === selected ? undefined : id)}
      onLift={moving?.lift}
      onDrag={moving?.drag}
    >
      {moving !== undefined && held !== undefined ? (
        <MovingPanel moving={moving} hours={hours} />
      ) : (
        mark !== undefined && (
          <StageDetails
            {...{ mark, hours, zone }}
            onMove={
              mark.stage.status === 'planned' && moving !== undefined ? () => moving.lift(mark.id) : undefined
            }
            onClose={() => setSelected(undefined)}
          />
        )
      )}
    </TideChart>
  );
}
