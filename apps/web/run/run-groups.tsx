import type { ReactNode } from 'react';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { RunPlan } from './use-run.js';

/** The groups in which pieces of a run part ways, and what none of them has. */
export function RunGroups({ plan }: { readonly plan: RunPlan | undefined }): ReactNode {
  const { run: words } = useWords();
  const texts = useTexts();
  if (plan?.groups === undefined) return null;
  const titleOf = (key: string): string => plan.amounts.find(({ part }) => part === key)?.title ?? key;
  return (
    <ul className="run-groups small">
      {plan.groups.map(({ key, title, count, parts }) => (
        <li key={key}>
          <strong>{title}</strong>: {words.piecesWith(count, texts.and(parts.map(titleOf)))}
        </li>
      ))}
      {plan.leftOut !== undefined && (
        <li>{words.notMade(texts.and(plan.leftOut.map(({ title }) => title)))}</li>
      )}
    </ul>
  );
}
