import { CircleCheck, Clock3, Hourglass, TriangleAlert } from 'lucide-react';
import type { ReactNode } from 'react';
import type { PlannedStage } from '#contract';
import { useNow } from '../look/times.js';
import { useWords } from '../words/words.js';
import { countdownText, timingOf, type StageTiming } from './countdown.js';

/** The running countdown of a stage: to its opening, to its last call, or since. */
export function CountdownView({
  stage,
  isLarge = false,
}: {
  readonly stage: PlannedStage;
  readonly isLarge?: boolean;
}): ReactNode {
  const { now: words } = useWords();
  const timing = timingOf(stage, useNow(1000));
  const { icon: Icon, sign } = signs[kindOf(timing)];
  return (
    <div className="count" data-timing={kindOf(timing)} data-large={isLarge}>
      <Counted timing={timing} />
      <p className="sign">
        <Icon size={isLarge ? 20 : 16} aria-hidden /> {words[sign]}
        {isEndless(timing) && `. ${words.noEnd}.`}
      </p>
      {timing.kind === 'ahead' && timing.lastCallIn !== null && (
        <p className="also numbers">
          <span className="digits-small">{countdownText(timing.lastCallIn)}</span> {words.lastCallIn}
        </p>
      )}
    </div>
  );
}

function Counted({ timing }: { readonly timing: StageTiming }): ReactNode {
  const { now: words } = useWords();
  // The sign says so already.
  if (isEndless(timing)) return null;
  const [ms, label] =
    timing.kind === 'ahead'
      ? [timing.opensIn, words.opensIn]
      : timing.kind === 'over'
        ? [timing.since, words.overFor]
        : [timing.lastCallIn ?? 0, words.lastCallIn];
  return (
    <p role="timer" className="counted">
      <span className="digits numbers">{countdownText(ms)}</span> <span className="unit">{label}</span>
    </p>
  );
}

function isEndless(timing: StageTiming): boolean {
  return timing.kind === 'open' && timing.lastCallIn === null;
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
