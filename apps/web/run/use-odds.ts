import { countedPair } from '#words';
import { useAmounts } from '../look/amounts.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { Document } from './use-run.js';

type Odds = Document['odds'];

/** Writes odds as people read them, `about 7 in 10`; of a plan that has none it says so. */
export function useOdds(): (odds: Odds) => string {
  const { run } = useWords();
  const { odds } = useTexts();
  return (each) => (each === null ? run.noOdds : odds(each.soundByTheDay));
}

/** Writes odds that are to be compared: as so many of the same number, where that tells them apart. */
export function useOddsPair(): (a: number | null, b: number | null) => readonly [string, string] {
  const { run } = useWords();
  const { odds } = useTexts();
  const { number } = useAmounts();
  return (a, b) => {
    const alone = (each: number | null): string => (each === null ? run.noOdds : odds(each));
    // Differences of less than one in a hundred are mostly chance.
    if (a === null || b === null || Math.round(a * 100) === Math.round(b * 100)) return [alone(a), alone(b)];
    const pair = countedPair(a, b);
    return [run.counted(number(pair.a), number(pair.of)), run.counted(number(pair.b), number(pair.of))];
  };
}
