import { Suspense, type ReactNode } from 'react';
import type { OddsBarWords } from '../words/en/odds-bar.js';
import { lazyWords } from '../words/lazy-words.js';
import './odds-bar.css';
import { oddsShares } from './odds-shares.js';
import type { Document } from './use-run.js';

const useOddsBarWords = lazyWords<OddsBarWords>({
  en: async () => (await import('../words/en/odds-bar.js')).oddsBar,
  de: async () => (await import('../words/de/odds-bar.js')).oddsBar,
});

type Odds = NonNullable<Document['odds']>;

/** Where the odds go: of a hundred runs, how many come out sound, late and lost. Each share is counted in words below it. */
export function OddsBar({ odds }: { readonly odds: Odds }): ReactNode {
  return (
    <Suspense fallback={<div className="odds-bar-room" />}>
      <Bar odds={odds} />
    </Suspense>
  );
}

function Bar({ odds: { soundByTheDay, soundAtAll } }: { readonly odds: Odds }): ReactNode {
  const words = useOddsBarWords();
  const { sound, late, lost } = oddsShares(soundByTheDay, soundAtAll);
  const shares = [
    { name: 'sound', count: sound, text: words.sound(sound, late > 0) },
    { name: 'late', count: late, text: words.late(late) },
    { name: 'lost', count: lost, text: words.lost(lost) },
  ].filter(({ count }) => count > 0);
  return (
    <figure className="odds-bar odds-bar-room">
      <figcaption className="small">{words.of}</figcaption>
      <div className="odds-bar-shares" aria-hidden>
        {shares.map(({ name, count }) => (
          <span key={name} className={`odds-bar-${name}`} style={{ flexGrow: count }} />
        ))}
      </div>
      <ul className="small">
        {shares.map(({ name, text }) => (
          <li key={name}>
            <span className={`odds-bar-sample odds-bar-${name}`} aria-hidden />
            {text}
          </li>
        ))}
      </ul>
    </figure>
  );
}
