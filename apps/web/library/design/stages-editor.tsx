import { ArrowDown, ArrowUp, Trash2 } from 'lucide-react';
import { useRef, useState, type ReactNode } from 'react';
import { stageKinds, type StageKind } from '#contract/names';
import { handsOnOf, type HandsOn } from '#runs';
import { SelectField, TextField } from '../../form/fields.js';
import { fieldId, useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import { listAt, valueAt, withMoved, textAt, type Value } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { ConditionFields } from './condition-fields.js';
import { useConditionTexts } from './condition-texts.js';
import { withoutStage, withStage } from './design-edits.js';
import type { DesignAround } from './design-around.js';

/** The stages that build a piece, in order, each with what it waits for in plain words. */
export function StagesEditor({ around }: { readonly around: DesignAround }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const stages = listAt(content, ['stages']);
  const [opened, setOpened] = useState<string | null>(null);
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
              <StageItem index={i} around={around} isOpen={opened === key} />
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
            const kind = target.value as StageKind;
            const next = withStage(content, kind, library.stageKinds[kind]);
            setOpened(textAt(next, ['stages', stages.length, 'key']));
            change([], next);
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

/** What counts where the maker leaves the time open: of a stage that says neither, what its kind usually takes. */
function usualHandsOn(stage: Value): HandsOn {
  const kind = stageKinds.find((each) => each === valueAt(stage, ['kind']));
  const isSaid = ['setupMin', 'perPieceS'].some((field) => typeof valueAt(stage, [field]) === 'number');
  return kind === undefined || isSaid ? { setupMin: 0, perPieceS: 0 } : handsOnOf({ kind });
}

function StageItem({
  index,
  around,
  isOpen,
}: {
  readonly index: number;
  readonly around: DesignAround;
  readonly isOpen: boolean;
}): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const path = ['stages', index];
  const stage = valueAt(content, path);
  const title = textAt(stage, ['title']);
  const usual = usualHandsOn(stage);
  const texts = useConditionTexts(valueAt(stage, ['key']));
  const parts = listAt(content, ['parts']).map((part) => ({
    value: textAt(part, ['key']),
    text: textAt(part, ['title']),
  }));
  return (
    <div className="item">
      <details open={isOpen || undefined}>
        <summary>
          <strong>{title === '' ? library.noName : title}</strong>
          <span className="soft small">{texts.length === 0 ? library.noConditions : texts.join('; ')}</span>
        </summary>
        <div className="stack">
          <div className="fields">
            <TextField path={[...path, 'title']} label={library.name} />
            <SelectField
              path={[...path, 'kind']}
              label={library.stageKind}
              choices={stageKinds.map((value) => ({ value, text: library.stageKinds[value] }))}
            />
            <SelectField path={[...path, 'part']} label={library.stagePart} choices={parts} />
            <NumberField
              path={[...path, 'setupMin']}
              label={library.setup}
              unit="min"
              preset={usual.setupMin}
            />
            <NumberField
              path={[...path, 'perPieceS']}
              label={library.perPieceTime}
              unit="s"
              preset={usual.perPieceS}
            />
          </div>
          <ConditionFields stage={valueAt(stage, ['key'])} />
          {around.workshop.equipment.length > 0 && (
            <ListEditor path={[...path, 'needs']} title={library.needs} most={10} make={() => ({ count: 1 })}>
              {(need) => (
                <div className="fields">
                  <SelectField
                    path={[...need, 'equipment']}
                    label={library.equipment}
                    choices={around.workshop.equipment.map((each) => ({ value: each.key, text: each.title }))}
                  />
                  <NumberField path={[...need, 'count']} label={library.count} preset={1} />
                </div>
              )}
            </ListEditor>
          )}
        </div>
      </details>
      <StageButtons index={index} title={title} />
    </div>
  );
}

/** Up, down, away. The focus goes along with the stage, so that it can be moved on without looking for it. */
function StageButtons({ index, title }: { readonly index: number; readonly title: string }): ReactNode {
  const { form } = useWords();
  const { content, change } = useForm();
  const count = listAt(content, ['stages']).length;
  const ref = useRef<HTMLDivElement>(null);
  const move = (by: -1 | 1): void => {
    change([], withMoved(content, ['stages'], index, index + by));
    requestAnimationFrame(() => {
      const usable = ref.current?.querySelectorAll<HTMLButtonElement>('button:not([disabled])') ?? [];
      ([...usable].find((each) => each.dataset.by === String(by)) ?? usable[0])?.focus();
    });
  };
  return (
    <div className="stage-buttons" ref={ref}>
      <button
        type="button"
        className="icon-button"
        data-by="-1"
        disabled={index === 0}
        aria-label={form.up(title)}
        onClick={() => move(-1)}
      >
        <ArrowUp size={20} aria-hidden />
      </button>
      <button
        type="button"
        className="icon-button"
        data-by="1"
        disabled={index === count - 1}
        aria-label={form.down(title)}
        onClick={() => move(1)}
      >
        <ArrowDown size={20} aria-hidden />
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label={`${form.remove}: ${title}`}
        onClick={() => change([], withoutStage(content, index))}
      >
        <Trash2 size={20} aria-hidden />
      </button>
    </div>
  );
}
