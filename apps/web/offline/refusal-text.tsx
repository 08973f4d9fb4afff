import type { ReactNode } from 'react';
import { useTexts } from '../look/use-texts.js';
import type { Refusal } from './queue-order.js';

/** Why an entry was not taken: what is wrong with it, or the API's own words where that is about no field. */
export function RefusalText({ refusal: { text, issues } }: { readonly refusal: Refusal }): ReactNode {
  const texts = useTexts();
  return issues.length === 0 ? text : issues.map(texts.issue).join(' ');
}
