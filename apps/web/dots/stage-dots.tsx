import { Suspense, type ReactNode } from 'react';
import type { PlannedStage, StageForecast } from '#contract';
import { timesOf } from '../look/forecast-times.js';
import type { Stretch } from '../look/local-days.js';
import { oneStop } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { useTexts } from '../look/use-texts.js';
import { isNearTo } from './axis.js';
import { countBy } from './dot-places.js';
import { useDotsWords } from './dots-words.js';
import { QuantileDots } from './quantile-dots.js';
import { toldCounts } from './told-counts.js';

type Stage = Pick<PlannedStage, 'startAt' | 'endAt' | 'forecasts'>;

export interface StageDotsProps {
  readonly stage: Stage;
  /** When the maker can be at the bench. */
  readonly hours: readonly Stretch[];
  /** IANA zone in which days are written. */
  readonly zone: string;
}

/** When what a stage waits for is likely to come, and what closes it to go, each as dots to be counted and in words. */
export function StageDots({ stage, hours, zone }: StageDotsProps): ReactNode {
  if (stage.forecasts === undefined) return null;
  return (
    <Suspense fallback={null}>
      {stage.forecasts.map((forecast) => (
        <Forecast
          key={`${forecast.part.part} ${forecast.state}`}
          {...{ forecast, hours, zone }}
          at={Date.parse(forecast.closes ? stage.endAt : stage.startAt)}
        />
      ))}
      <Explanation of={stage.forecasts[0]!} />
    </Suspense>
  );
}

function Explanation({ of: { minutes } }: { readonly of: StageForecast }): ReactNode {
  return <p className="small soft">{useDotsWords().each(minutes.length)}</p>;
}

function Forecast({
  forecast,
  at,
  hours,
  zone,
}: Omit<StageDotsProps, 'stage'> & {
  readonly forecast: StageForecast;
  /** When the plan asks for it. */
  readonly at: number;
}): ReactNode {
  const words = useDotsWords();
  const texts = useTexts();
  const { dayTime } = useTimes();
  const { closes } = forecast;
  const times = timesOf(forecast);
  const all = times.length;
  const come = countBy(times, at);
  const say = closes ? words.over : words.by;
  const told = toldCounts(times, hours).map((each) => say(each.count, all, dayTime(each.at)));
  return (
    <div className="stack tight">
      <p className="small">
        <strong>{(closes ? words.closes : words.opens)(forecast, texts)}</strong>:{' '}
        {oneStop(
          closes ? words.stillAtPlan(all - come, all, dayTime(at)) : words.byPlan(come, all, dayTime(at)),
        )}
      </p>
      {isNearTo(times, at) && (
        <>
          <QuantileDots {...{ times, closes, hours, zone }} mark={{ at, text: words.planned }} />
          <p className="small soft">{oneStop(`${told.join(' · ')}.`)}</p>
        </>
      )}
    </div>
  );
}

/** The time in which hours matter to the forecasts of a stage. */
export function aroundForecasts({ startAt, endAt, forecasts = [] }: Stage): Stretch {
  const near = forecasts
    .flatMap((each) => timesOf(each))
    .filter((at) => Math.abs(at - Date.parse(startAt)) < FAR);
  return {
    from: Math.min(Date.parse(startAt), ...near) - DAY,
    to: Math.max(Date.parse(endAt), ...near) + DAY,
  };
}

const DAY = 86_400_000;
/** Nobody looks that far for an hour. */
const FAR = 30 * DAY;
