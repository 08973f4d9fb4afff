import { useTimes } from '../look/times.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { TideMark, TideStage } from './tide-run.js';

/** How a stage is told in words. */
export interface StageWords {
  /** All of it in one sentence or two, for those who hear the chart. */
  readonly label: (mark: TideMark) => string;
  readonly lastCall: (stage: TideStage) => string;
  /** When it is open with 90 % certainty. */
  readonly surely: (stage: TideStage) => string;
}

export function useStageWords(): StageWords {
  const { tide } = useWords();
  const { dayTime } = useTimes();
  const texts = useTexts();
  const lastCall = ({ lastCallAt }: TideStage): string =>
    lastCallAt === null ? tide.none : dayTime(lastCallAt);
  return {
    lastCall,
    label({ number, stage }) {
      const told = { number, title: stage.title, state: tide.status[stage.status] };
      if (stage.status !== 'planned') return tide.doneLabel({ ...told, at: dayTime(stage.endAt) });
      return tide.markLabel({
        ...told,
        opens: dayTime(stage.opensAt),
        best: dayTime(stage.bestAt),
        lastCall: lastCall(stage),
        why: stage.why.map((each) => texts.of(each)).join(' '),
      });
    },
    surely({ surelyOpenAt: from, surelyUntil: to }) {
      if (from === null) return tide.surelyNever;
      if (to === null) return tide.surelyFrom(dayTime(from));
      return from <= to ? tide.surelySpan(dayTime(from), dayTime(to)) : tide.surelyNever;
    },
  };
}
