import type { ReactNode } from 'react';
import type { Message } from '#contract';
import { useTexts } from './use-texts.js';

/** What a message says to this reader. */
export function Sentence({ of }: { readonly of: Message }): ReactNode {
  return useTexts().of(of);
}
