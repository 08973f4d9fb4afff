import { useWords } from '../words/words.js';
import { useAmounts } from '../look/amounts.js';
import { suretyOf } from './odds-words.js';
import type { Document } from './use-run.js';

/** Odds as people read them. */
export interface OddsText {
  /** `66 %` */
  readonly percent: (odds: Document['odds']) => string;
  /** `likely: 66 % ± 1 %` */
  readonly full: (odds: NonNullable<Document['odds']>) => string;
}

export function useOdds(): OddsText {
  const { run } = useWords();
  const { number } = useAmounts();
  const percent = (share: number, digits = 0): string => `${number(share * 100, digits)} %`;
  return {
    percent: (odds) => (odds === null ? run.noOdds : percent(odds.probability)),
    full: ({ probability, standardError }) =>
      run.holds.odds(run.holds.words[suretyOf(probability)], percent(probability), percent(standardError, 1)),
  };
}
