import type { ReactNode } from 'react';
import type { RunPlan } from '#contract';
import { useWords } from '../words/words.js';

/** What the plan keeps of what its design leaves unsaid, such as that no soap is unmoulded before it is firm. */
export function AddedNote({ run }: { readonly run: RunPlan | undefined }): ReactNode {
  const { library } = useWords();
  const { added = [], stages = [], amounts = [] } = run ?? {};
  if (added.length === 0) return null;
  const stageTitle = (key: string): string => stages.find((stage) => stage.key === key)?.title ?? key;
  const partTitle = (key: string): string => amounts.find(({ part }) => part === key)?.title ?? key;
  const lines = added.map((each) =>
    library.addedText(
      stageTitle(each.stage),
      'after' in each
        ? library.linkText(stageTitle(each.after), undefined, undefined)
        : 'opens' in each
          ? library.opens[each.opens](partTitle(each.part))
          : library.closes[each.closes](partTitle(each.part)),
    ),
  );
  return (
    <div className="note stack tight">
      <h3>{library.added}</h3>
      <ul className="small">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
