import type { ReactNode } from 'react';
import { oneStop } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { useOddsPair } from '../run/use-odds.js';
import { useWords } from '../words/words.js';
import type { BenchRun } from './bench-view.js';
import { chanceAt, lookAgain } from './next-look.js';
import { planOf } from './sitting-facts.js';
import type { Logged } from './use-logging.js';

/** After “not firm yet”: when to look again, and how likely it is that it is ready by then. */
export function NextLook({
  logged: { entry, outcome, oddsBefore },
  stage: key,
  bench,
}: {
  readonly logged: Logged;
  readonly stage: string;
  readonly bench: BenchRun | undefined;
}): ReactNode {
  const { now: words } = useWords();
  const { odds } = useTexts();
  const oddsPair = useOddsPair();
  const times = useTimes();
  if (bench === undefined || (outcome?.status !== 'sent' && outcome?.status !== 'waiting')) return null;
  const document = outcome.status === 'sent' ? outcome.answer.plan.document : bench.document;
  const plan = planOf({ ...bench, document });
  const stage = plan?.stages.find((each) => each.key === key && each.status === 'planned');
  if (plan === undefined || stage === undefined || document.status !== 'planned') return null;
  const looked = Date.parse(entry.at);
  // Without an answer there is no plan that knows of it: what was forecast says when half of the times that are left have passed.
  const at = outcome.status === 'sent' ? Date.parse(stage.startAt) : lookAgain(stage, looked);
  if (at === undefined) return null;
  const chance = outcome.status === 'sent' ? chanceAt(stage, at) : 0.5;
  const surely = stage.surelyOpenAt === null ? NaN : Date.parse(stage.surelyOpenAt);
  const after = document.odds?.soundByTheDay ?? null;
  const [oddsNow, oddsThen] = oddsPair(after, oddsBefore);
  return (
    <p className="next-look numbers">
      <strong>{oneStop(words.nextLook.at(times.timeFrom(looked, at)))}</strong>{' '}
      {chance !== undefined && words.nextLook.ready(odds(chance))}{' '}
      {outcome.status === 'sent' &&
        surely > at &&
        oneStop(words.nextLook.countOn(times.timeFrom(looked, surely)))}{' '}
      {outcome.status === 'sent' &&
        after !== null &&
        oddsBefore !== null &&
        (oddsNow === oddsThen ? words.nextLook.oddsSame(oddsNow) : words.nextLook.odds(oddsNow, oddsThen))}
    </p>
  );
}
