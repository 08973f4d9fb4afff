import { useMemo, useState, type ReactNode } from 'react';
import type { PlanDocument, PlannedStage } from '#contract';
import type { WeeklyHours } from '#hours';
import { StageDots, aroundForecasts } from '../dots/stage-dots.js';
import { lensPath } from '../look/lens.js';
import { openStretches } from '../look/local-days.js';
import { StagePieces } from '../look/stage-pieces.js';
import { useTimes } from '../look/times.js';
import { useWidth } from '../look/use-width.js';
import { useWords } from '../words/words.js';
import { sittingsOf, stretchOf } from './plan-facts.js';

const HEIGHT = 22;

/** When the maker is at the bench and what for, with the window of each stage as a lens and in words. */
export function Sittings({
  plan,
  hours,
}: {
  readonly plan: PlanDocument;
  readonly hours: WeeklyHours;
}): ReactNode {
  const { plan: words } = useWords();
  const times = useTimes();
  const [ref, width] = useWidth();
  const sittings = sittingsOf(plan);
  const stretch = stretchOf(sittings.flatMap(({ stages }) => stages));
  return (
    <section className="stack tight" ref={ref}>
      <h3>{words.windows}</h3>
      <ol className="sittings">
        {sittings.map(({ startAt, endAt, stages }, i) => (
          <li key={i}>
            <h4 className="numbers">
              {words.sitting(i + 1)}: {times.dayTime(startAt)}–{times.time(endAt)}
            </h4>
            <ul>
              {stages.map((stage) => (
                <li key={`${stage.key} ${String(stage.attempt)}`}>
                  <span>
                    {stage.title}
                    <StagePieces stage={stage} all={plan.runs[0]?.groups} />
                  </span>
                  <WindowPicture stage={stage} stretch={stretch} width={width} />
                  <span className="soft small numbers">
                    {words.opens} {times.dayTime(stage.opensAt)} · {words.best} {times.dayTime(stage.bestAt)}{' '}
                    ·{' '}
                    {stage.lastCallAt === null
                      ? words.noLastCall
                      : `${words.lastCall} ${times.dayTime(stage.lastCallAt)}`}
                  </span>
                  <HowSure stage={stage} hours={hours} zone={plan.timeZone} />
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** When what it waits for is likely to come, drawn once it is asked for. */
function HowSure({
  stage,
  hours,
  zone,
}: {
  readonly stage: PlannedStage;
  readonly hours: WeeklyHours;
  readonly zone: string;
}): ReactNode {
  const { plan: words } = useWords();
  const [isOpen, setOpen] = useState(false);
  const stretches = useMemo(
    () => (isOpen ? openStretches(hours, zone, aroundForecasts(stage)) : []),
    [isOpen, hours, zone, stage],
  );
  if (stage.forecasts === undefined) return null;
  return (
    <details className="how-sure" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary className="small">{words.howSure}</summary>
      {isOpen && <StageDots {...{ stage, zone }} hours={stretches} />}
    </details>
  );
}

/** The window on the line of the whole run; the words beside it say the same. */
function WindowPicture({
  stage,
  stretch: [from, to],
  width,
}: {
  readonly stage: PlannedStage;
  readonly stretch: readonly [number, number];
  readonly width: number;
}): ReactNode {
  const inner = Math.max(0, width - 16);
  const x = (at: string): number =>
    8 + inner * Math.min(1, Math.max(0, (Date.parse(at) - from) / Math.max(1, to - from)));
  const [opens, best] = [x(stage.opensAt), x(stage.bestAt)];
  const last = stage.lastCallAt === null ? width - 8 : x(stage.lastCallAt);
  return (
    <svg width="100%" height={HEIGHT} aria-hidden className="window">
      {width > 0 && (
        <>
          <line x1={8} x2={width - 8} y1={HEIGHT / 2} y2={HEIGHT / 2} className="axis" />
          <path d={lensPath(opens, best, Math.max(best, last), HEIGHT / 2, 7)} className="lens" />
          <circle cx={best} cy={HEIGHT / 2} r={4} className="best" />
        </>
      )}
    </svg>
  );
}
