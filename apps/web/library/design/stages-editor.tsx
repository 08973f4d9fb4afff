import { useState, type ReactNode } from 'react';
import { stageKinds, type StageKind } from '#contract/names';
import { fieldId, useForm } from '../../form/form-context.js';
import { listAt, textAt } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { useStageConditions } from './use-stage-conditions.js';
import type { DesignAround } from './design-around.js';
import { withStage } from './design-edits.js';
import { usePieceTitles } from './patterns/use-piece-titles.js';
import { StageItem } from './stage-item.js';

/** The stages that build a piece, in order, a line each; one of them is open at a time. */
export function StagesEditor({ around }: { readonly around: DesignAround }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const conditions = useStageConditions();
  const stages = listAt(content, ['stages']);
  const [fresh, setFresh] = useState<string | null>(null);
  const add = (kind: StageKind): void => {
    const known = new Set(stages.map((stage) => textAt(stage, ['key'])));
    const next = withStage(content, kind, titles);
    const made = listAt(next, ['stages']).map((stage) => textAt(stage, ['key']));
    setFresh(made.find((key) => !known.has(key)) ?? null);
    change([], next);
  };
  return (
    <section className="card stack" aria-labelledby={fieldId(['stages'])}>
      <div className="stack tight">
        <h2 id={fieldId(['stages'])} tabIndex={-1}>
          {library.stages}
        </h2>
        <p className="soft small">{library.stagesLead}</p>
      </div>
      <ol className="string">
        {stages.map((stage, i) => {
          const key = textAt(stage, ['key']);
          return (
            <li key={key}>
              <StageItem index={i} around={around} conditions={conditions.get(key)} isFresh={fresh === key} />
            </li>
          );
        })}
      </ol>
      <div className="field add-stage">
        <label htmlFor="add-stage">{library.addStage}</label>
        <select
          id="add-stage"
          value=""
          onChange={({ target }) => {
            const kind = stageKinds.find((each) => each === target.value);
            if (kind !== undefined) add(kind);
          }}
        >
          <option value="">…</option>
          {stageKinds.map((kind) => (
            <option key={kind} value={kind}>
              {library.stageKinds[kind]}
            </option>
          ))}
        </select>
      </div>
    </section>
  );
}
