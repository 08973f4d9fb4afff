import type { ReactNode } from 'react';
import type { RunPlan } from '#contract';
import { useThings } from '../library/shelf-calls.js';
import { useWords } from '../words/words.js';

/** What the plan keeps though its design does not say so, such as that no soap is unmoulded before it is firm; in one line. */
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
  const byStage = new Map<string, string[]>();
  for (const each of added) {
    const [stage, other] = [
      stageTitle(each.stage),
      'after' in each ? stageTitle(each.after) : partTitle(each.part),
    ];
    // A key says nothing to anybody: of a design that has changed since, less is told.
    if (stage === '' || other === '') continue;
    const condition =
      'after' in each
        ? library.linkText(other, undefined, undefined)
        : 'opens' in each
          ? library.opens[each.opens](other)
          : library.closes[each.closes](other);
    byStage.set(stage, [...(byStage.get(stage) ?? []), condition]);
  }
  const count = [...byStage.values()].reduce((sum, { length }) => sum + length, 0);
  if (count === 0) return null;
  return (
    <details className="more">
      <summary>{library.added(count)}</summary>
      <ul className="small">
        {[...byStage].map(([stage, conditions]) => (
          <li key={stage}>{library.addedText(stage, conditions.join('; '))}</li>
        ))}
      </ul>
    </details>
  );
}
