import { CircleCheck, Clock3, Hourglass, TriangleAlert } from 'lucide-react';
import type { ReactNode } from 'react';
import type { PlannedStage } from '#contract';
import { useNow, useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { countedOf, countdownText, timingOf, type StageTiming } from './countdown.js';

/** How a stage stands against the clock: counted to the second where that is near, and said in a word otherwise. */
export function CountdownView({ stage }: { readonly stage: PlannedStage }): ReactNode {
  const { now: words } = useWords();
  const times = useTimes();
  const present = useNow(1000);
  const timing = timingOf(stage, present);
  const { icon: Icon, sign } = signs[kindOf(timing)];
  const counted = countedOf(timing);
  return (
    <div className="count" data-timing={kindOf(timing)}>
      {counted !== undefined && (
        <p role="timer" className="counted">
          <span className="digits numbers">{countdownText(counted)}</span>{' '}
          <span className="unit">
            {timing.kind === 'ahead'
              ? words.opensIn
              : timing.kind === 'over'
                ? words.overFor
                : words.lastCallIn}
          </span>
        </p>
      )}
      <p className="sign">
        <Icon size={20} aria-hidden /> {words[sign]}
        {timing.kind === 'ahead' && counted === undefined && (
          <span className="numbers"> · {words.opensAt(times.timeFrom(present, stage.opensAt))}</span>
        )}
        {timing.kind === 'open' && timing.lastCallIn === null && `. ${words.noEnd}.`}
      </p>
    </div>
  );
}

const signs = {
  ahead: { icon: Hourglass, sign: 'ahead' },
  open: { icon: CircleCheck, sign: 'open' },
  urgent: { icon: Clock3, sign: 'urgent' },
  over: { icon: TriangleAlert, sign: 'over' },
} as const;

function kindOf(timing: StageTiming): keyof typeof signs {
  return timing.kind === 'open' && timing.isUrgent ? 'urgent' : timing.kind;
}
