import type { ReactNode } from 'react';
import type { MishapKind, RunPlan } from '#contract';
import { spoilsBatter } from '#contract/names';
import { useWords } from '../words/words.js';

/** Whether a mishap of a part takes what was mixed with it along, unless the maker says otherwise. */
export function spoilsOthers(
  { batches = [] }: { readonly batches?: RunPlan['batches'] | undefined },
  part: string,
  mishap: MishapKind,
): boolean {
  return (
    spoilsBatter[mishap] !== undefined &&
    batches.some(({ parts }) => parts.length > 1 && parts.includes(part))
  );
}

/** Asks whether the rest of the batch is sound. */
export function AloneChoice({
  isAlone,
  onChange,
}: {
  readonly isAlone: boolean;
  readonly onChange: (isAlone: boolean) => void;
}): ReactNode {
  const { mishap: words } = useWords().run;
  return (
    <div className="field">
      <label className="row">
        <input type="checkbox" checked={isAlone} onChange={(event) => onChange(event.target.checked)} />
        {words.alone}
      </label>
      <p className="small soft">{words.together}</p>
    </div>
  );
}
