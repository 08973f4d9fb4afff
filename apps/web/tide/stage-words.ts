import { useTimes } from '../look/times.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { TideMark, TideStage } from './tide-run.js';

/** How a stage is told in words. */
export interface StageWords {
  /** All of it in one sentence or two, for those who hear the chart. */
  readonly label: (mark: TideMark) => string;
  readonly lastCall: (stage: TideStage) => string;
  /** How many runs are lost at it; nothing where next to none are. */
  readonly risk: (lost: number) => readonly string[];
  /** When it is open with 90 % certainty. */
  readonly surely: (stage: TideStage) => string;
}

/** A smaller share of lost runs is not worth a word. */
const TOLD = 0.01;

export function useStageWords(): StageWords {
  const { tide } = useWords();
  const { dayTime } = useTimes();
  const texts = useTexts();
  const risk = (lost: number): string[] => (lost < TOLD ? [] : [tide.lost(texts.odds(lost))]);
  const lastCall = ({ lastCallAt }: TideStage): string =>
    lastCallAt === null ? tide.none : dayTime(lastCallAt);
  return {
    lastCall,
    risk,
    label({ number, stage, lost }) {
      const told = { number, title: stage.title, state: tide.status[stage.status] };
      if (stage.status !== 'planned') return tide.doneLabel({ ...told, at: dayTime(stage.endAt) });
      return tide.markLabel({
        ...told,
        opens: dayTime(stage.opensAt),
        best: dayTime(stage.bestAt),
        lastCall: lastCall(stage),
        why: [...stage.why.map((each) => texts.of(each)), ...risk(lost)].join(' '),
      });
    },
    surely({ surelyOpenAt: from, surelyUntil: to }) {
      if (from === null) return tide.surelyNever;
      if (to === null) return tide.surelyFrom(dayTime(from));
      return from <= to ? tide.surelySpan(dayTime(from), dayTime(to)) : tide.surelyNever;
    },
  };
}
