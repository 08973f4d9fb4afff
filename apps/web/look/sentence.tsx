import type { ReactNode } from 'react';
import type { Message } from '#contract';
import { useTexts } from './use-texts.js';

/** A day that is abbreviated ends with a full stop, in German, and so does a sentence: one of the two is enough. */
export function oneStop(text: string): string {
  return text.replace(/\.\.(?=\s|$)/g, '.');
}

/** What a message says to this reader. */
export function Sentence({ of }: { readonly of: Message }): ReactNode {
  return useTexts().of(of);
}

/** What messages say, one after the other. */
export function Sentences({ of }: { readonly of: readonly Message[] }): ReactNode {
  const texts = useTexts();
  return of.map((each) => texts.of(each)).join(' ');
}

/** What messages say, as a list; nothing where there are none. */
export function SentenceList({ of }: { readonly of: readonly Message[] }): ReactNode {
  const texts = useTexts();
  if (of.length === 0) return null;
  const told = [...new Set(of.map((each) => texts.of(each)))];
  return (
    <ul>
      {told.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
