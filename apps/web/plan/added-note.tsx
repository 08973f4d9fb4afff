import type { ReactNode } from 'react';
import type { RunPlan } from '#contract';
import { useThings } from '../library/shelf-calls.js';
import { useWords } from '../words/words.js';

/** What the plan keeps of what its design leaves unsaid, such as that no soap is unmoulded before it is firm. */
export function AddedNote({ run }: { readonly run: RunPlan | undefined }): ReactNode {
  const { library } = useWords();
  // Where there is no plan, only the design has the titles.
  const design = useThings('designs').data?.find(({ content }) => content.key === run?.design)?.content;
  const { added = [], stages = [], amounts = [] } = run ?? {};
  const titleOf = (
    planned: string | undefined,
    list: readonly { readonly key: string; readonly title: string }[] | undefined,
    key: string,
  ): string => planned ?? list?.find((each) => each.key === key)?.title ?? '';
  const stageTitle = (key: string): string =>
    titleOf(stages.find((stage) => stage.key === key)?.title, design?.stages, key);
  const partTitle = (key: string): string =>
    titleOf(amounts.find(({ part }) => part === key)?.title, design?.parts, key);
  const lines = added.flatMap((each) => {
    const [stage, other] = [
      stageTitle(each.stage),
      'after' in each ? stageTitle(each.after) : partTitle(each.part),
    ];
    // A key says nothing to anybody: of a design that has changed since, less is told.
    if (stage === '' || other === '') return [];
    const condition =
      'after' in each
        ? library.linkText(other, undefined, undefined)
        : 'opens' in each
          ? library.opens[each.opens](other)
          : library.closes[each.closes](other);
    return [library.addedText(stage, condition)];
  });
  if (lines.length === 0) return null;
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
