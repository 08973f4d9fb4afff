import { ArrowDown, ArrowUp, Trash2 } from 'lucide-react';
import { useRef, type ReactNode } from 'react';
import type { PieceDesign, Stage } from '#contract';
import { stageKinds, type StageKind } from '#contract/names';
import { handsOnOf, hostOf, isPutOnto, type HandsOn } from '#runs';
import { SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import { listAt, textAt, valueAt, withMoved, type Value } from '../../form/values.js';
import { useAmounts } from '../../look/amounts.js';
import { useTimes } from '../../look/times.js';
import { useWords } from '../../words/words.js';
import { ConditionFields } from './condition-fields.js';
import type { StageConditions } from './stage-conditions.js';
import type { DesignAround } from './design-around.js';
import { withoutStage, withStageKind, withStagePart } from './design-edits.js';
import { ItemDetails } from './item-details.js';
import { usePieceTitles } from './patterns/use-piece-titles.js';

const nothing: StageConditions = { own: [], implied: [], without: [] };

/** One stage: what is done, when it may be, and how long it takes. */
export function StageItem({
  index,
  around,
  conditions = nothing,
  isFresh,
}: {
  readonly index: number;
  readonly around: DesignAround;
  readonly conditions: StageConditions | undefined;
  readonly isFresh: boolean;
}): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const path = ['stages', index];
  const stage = valueAt(content, path);
  const title = textAt(stage, ['title']);
  const line = useStageLine(stage, conditions);
  return (
    <div className="item">
      <ItemDetails list="stages" index={index} title={title} line={line} isFresh={isFresh}>
        <TextField path={[...path, 'title']} label={library.name} />
        <DoneFields index={index} />
        <TimeFields index={index} />
        <ConditionFields stage={stage} conditions={conditions} />
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
      </ItemDetails>
      <StageButtons index={index} title={title} />
    </div>
  );
}

/** When it may be done and how long it takes, in one line. */
function useStageLine(stage: Value, { own, implied }: StageConditions): string {
  const { library } = useWords();
  const { length } = useTimes();
  const { number } = useAmounts();
  const { setupMin, perPieceS } = usualHandsOn(stage);
  const figure = (field: string, usual: number): number => {
    const value = valueAt(stage, [field]);
    return typeof value === 'number' ? value : usual;
  };
  const [setup, each] = [figure('setupMin', setupMin), figure('perPieceS', perPieceS)];
  const handsOn =
    setup > 0 || each > 0
      ? library.handsOn(setup > 0 ? length(setup) : '', each > 0 ? `${number(each)} s` : '')
      : library.noHandsOn;
  const conditions = [...own, ...implied.map(({ text }) => text)];
  const when = conditions.length === 0 ? library.noConditions : conditions.join('; ');
  return `${when} · ${handsOn}`;
}

/** What counts where the maker leaves the time open: of a stage that says neither, what its kind usually takes. */
function usualHandsOn(stage: Value): HandsOn {
  const kind = stageKinds.find((each) => each === valueAt(stage, ['kind']));
  const isSaid = ['setupMin', 'perPieceS'].some((field) => typeof valueAt(stage, [field]) === 'number');
  return kind === undefined || isSaid ? { setupMin: 0, perPieceS: 0 } : handsOnOf({ kind });
}

/** What is done, to which part, and what that is put onto. */
function DoneFields({ index }: { readonly index: number }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const path = ['stages', index];
  const stage = valueAt(content, path);
  const kind = stageKinds.find((each) => each === valueAt(stage, ['kind']));
  const parts = listAt(content, ['parts']).map((part) => ({
    value: textAt(part, ['key']),
    text: textAt(part, ['title']) || library.noName,
    kind: valueAt(part, ['kind']),
  }));
  const hosts = parts.filter((each) => each.value !== valueAt(stage, ['part']) && each.kind !== 'decor');
  return (
    <div className="fields">
      <SelectField
        path={[...path, 'kind']}
        label={library.stageKind}
        choices={stageKinds.map((value) => ({ value, text: library.stageKinds[value] }))}
        onChosen={(next) => change([], withStageKind(content, index, next as StageKind, titles))}
      />
      <SelectField
        path={[...path, 'part']}
        label={library.stagePart}
        choices={parts}
        onChosen={(next) => change([], withStagePart(content, index, next, titles))}
      />
      {kind !== undefined && isPutOnto(kind) && hosts.length > 0 && (
        <SelectField
          path={[...path, 'onto']}
          label={library.onto}
          none={library.ontoUsual(usualHost(content, stage))}
          choices={hosts}
        />
      )}
    </div>
  );
}

/** The part that a stage puts its own onto while the design does not say; empty for none. */
function usualHost(content: Value, stage: Value): string {
  const [parts, stages, links, waits] = ['parts', 'stages', 'links', 'waits'].map((list) =>
    listAt(content, [list]),
  );
  // Half written as it may be: only keys, kinds and moulds are compared.
  const design = { parts, stages, links, waits } as unknown as PieceDesign;
  const { onto: _chosen, ...open } = stage as unknown as Stage;
  const host = hostOf(
    { ...design, stages: design.stages.map((each) => (each.key === open.key ? open : each)) },
    open,
  );
  return host?.title ?? '';
}

function TimeFields({ index }: { readonly index: number }): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const path = ['stages', index];
  const usual = usualHandsOn(valueAt(content, path));
  return (
    <fieldset className="stack tight">
      <legend>{library.handsOnTitle}</legend>
      <div className="fields">
        <NumberField path={[...path, 'setupMin']} label={library.setup} unit="min" preset={usual.setupMin} />
        <NumberField
          path={[...path, 'perPieceS']}
          label={library.perPieceTime}
          unit="s"
          preset={usual.perPieceS}
        />
      </div>
      <p className="soft small">{library.handsOnHint}</p>
    </fieldset>
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
