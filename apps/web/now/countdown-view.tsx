import { CircleCheck, Clock3, Hourglass, TriangleAlert } from 'lucide-react';
import type { ReactNode } from 'react';
import type { PlannedStage } from '#contract';
import { useNow } from '../look/times.js';
import { useWords } from '../words/words.js';
import { countdownText, standingOf, type Standing } from './countdown.js';

/** The running countdown of a stage: to its opening, to its last call, or since. */
export function CountdownView({
  stage,
  isLarge = false,
}: {
  readonly stage: PlannedStage;
  readonly isLarge?: boolean;
}): ReactNode {
  const { now: words } = useWords();
  const standing = standingOf(stage, useNow(1000));
  const { icon: Icon, sign } = signs[kindOf(standing)];
  return (
    <div className="count" data-standing={kindOf(standing)} data-large={isLarge}>
      <Counted standing={standing} />
      <p className="sign">
        <Icon size={isLarge ? 20 : 16} aria-hidden /> {words[sign]}
        {isEndless(standing) && `. ${words.noEnd}.`}
      </p>
      {standing.kind === 'ahead' && standing.lastCallIn !== null && (
        <p className="also numbers">
          <span className="digits-small">{countdownText(standing.lastCallIn)}</span> {words.lastCallIn}
        </p>
      )}
    </div>
  );
}

function Counted({ standing }: { readonly standing: Standing }): ReactNode {
  const { now: words } = useWords();
  // The sign says so already.
  if (isEndless(standing)) return null;
  const [ms, label] =
    standing.kind === 'ahead'
      ? [standing.opensIn, words.opensIn]
      : standing.kind === 'over'
        ? [standing.since, words.overFor]
        : [standing.lastCallIn ?? 0, words.lastCallIn];
  return (
    <p role="timer" className="counted">
      <span className="digits numbers">{countdownText(ms)}</span> <span className="unit">{label}</span>
    </p>
  );
}

function isEndless(standing: Standing): boolean {
  return standing.kind === 'open' && standing.lastCallIn === null;
}

const signs = {
  ahead: { icon: Hourglass, sign: 'ahead' },
  open: { icon: CircleCheck, sign: 'open' },
  urgent: { icon: Clock3, sign: 'urgent' },
  over: { icon: TriangleAlert, sign: 'over' },
} as const;

function kindOf(standing: Standing): keyof typeof signs {
  return standing.kind === 'open' && standing.isUrgent ? 'urgent' : standing.kind;
}
