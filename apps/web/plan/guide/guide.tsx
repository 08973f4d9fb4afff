import type { ReactNode } from 'react';
import type { PlanInput } from '#contract';
import { useWords } from '../../words/words.js';

export default function Guide({ input: _input }: { readonly input: PlanInput }): ReactNode {
  return <h1>{useWords().plan.guide.title}</h1>;
}
