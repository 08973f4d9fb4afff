/** How sure a probability is, in words. */
export type Surety = 'surely' | 'likely' | 'rather' | 'even' | 'hardly' | 'unlikely';

/** From which probability on a word fits; our own judgement. */
const steps: readonly (readonly [number, Surety])[] = [
  [0.95, 'surely'],
  [0.85, 'likely'],
  [0.65, 'rather'],
  [0.45, 'even'],
  [0.2, 'hardly'],
  [0, 'unlikely'],
];

/** @param probability 0 to 1 */
export function suretyOf(probability: number): Surety {
  return steps.find(([from]) => probability >= from)![1];
}
