import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import type { StageKind } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { fieldId, useForm } from '../../form/form-context.js';
import { LengthField } from '../../form/length-field.js';
import { listAt, textAt, valueAt, withItem, withoutItem, type Value } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import type { StageConditions } from './stage-conditions.js';
import { conditionsOf, withoutWait } from './design-edits.js';
import { statesOf } from './states-of.js';

/** When a stage may be done: what comes with its kind, what the piece goes without, and what the maker says besides. */
export function ConditionFields({
  stage,
  conditions,
}: {
  readonly stage: Value;
  readonly conditions: StageConditions;
}): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const key = valueAt(stage, ['key']);
  const { links, waits, without } = conditionsOf(content, key);
  const others = listAt(content, ['stages']).filter((each) => valueAt(each, ['key']) !== key);
  const firstPart = valueAt(content, ['parts', 0, 'key']);
  return (
    <fieldset className="stack tight">
      <legend>{library.mayBegin}</legend>
      <Implied stage={stage} conditions={conditions} />
      {without.map((i, nth) => (
        <WithoutItem key={`without ${String(i)}`} index={i} text={conditions.without[nth] ?? ''} />
      ))}
      {links.map((i) => (
        <LinkItem key={`link ${String(i)}`} index={i} others={others} />
      ))}
      {waits.map((i) => (
        <WaitItem key={`wait ${String(i)}`} index={i} />
      ))}
      <div className="row">
        {others.length > 0 && (
          <button
            type="button"
            className="button plain"
            onClick={() => {
              const from = valueAt(others.at(-1), ['key']);
              change([], withItem(content, ['links'], { from, to: key }));
            }}
          >
            + {library.addLink}
          </button>
        )}
        <button
          type="button"
          className="button plain"
          onClick={() => change([], withItem(content, ['waits'], { stage: key, part: firstPart }))}
        >
          + {library.addWait}
        </button>
      </div>
    </fieldset>
  );
}

/** What comes with the kind of the stage, each with the way to go without it, where there is one. */
function Implied({
  stage,
  conditions: { implied },
}: {
  readonly stage: Value;
  readonly conditions: StageConditions;
}): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const kind = library.stageKinds[valueAt(stage, ['kind']) as StageKind];
  if (implied.length === 0) return null;
  return (
    <ul className="implied">
      {implied.map(({ text, refusable }, i) => (
        // Parts of one name have conditions of one text.
        <li key={i} className="row apart">
          <span className="small">{library.comesWith(kind, text)}</span>
          {refusable !== undefined && (
            <button
              type="button"
              className="button plain"
              aria-label={library.withoutName(text)}
              onClick={() => {
                const { part, state } = refusable;
                change([], withoutWait(content, textAt(stage, ['key']), part, state));
              }}
            >
              {library.without}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}

function WithoutItem({ index, text }: { readonly index: number; readonly text: string }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  return (
    <div className="note amber stack tight">
      <p className="small">{library.goesWithout(text)}</p>
      <TextField path={['without', index, 'reason']} label={library.withoutReason} />
      <p>
        <button
          type="button"
          className="button plain"
          aria-label={library.takeBackName(text)}
          onClick={() => change([], withoutItem(content, ['without'], index))}
        >
          {library.takeBack}
        </button>
      </p>
    </div>
  );
}

function LinkItem({
  index,
  others,
}: {
  readonly index: number;
  readonly others: readonly Value[];
}): ReactNode {
  const { library } = useWords();
  const path = ['links', index];
  return (
    <Item list="links" index={index} name={library.addLink}>
      <SelectField
        path={[...path, 'from']}
        label={library.after}
        choices={others.map((each) => ({
          value: textAt(each, ['key']),
          text: textAt(each, ['title']) || library.noName,
        }))}
      />
      <LengthField path={[...path, 'atLeastMin']} label={library.atLeast} />
      <LengthField path={[...path, 'atMostMin']} label={library.atMost} />
    </Item>
  );
}

function WaitItem({ index }: { readonly index: number }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const path = ['waits', index];
  const wait = valueAt(content, path);
  const parts = listAt(content, ['parts']);
  const part = parts.find((each) => valueAt(each, ['key']) === valueAt(wait, ['part']));
  const title = textAt(part, ['title']) || '…';
  const { opening, closing } = statesOf(valueAt(part, ['kind']));
  return (
    <Item list="waits" index={index} name={library.addWait}>
      <SelectField
        path={[...path, 'part']}
        label={library.byPart}
        choices={parts
          .filter((each) => valueAt(each, ['kind']) !== 'decor')
          .map((each) => ({
            value: textAt(each, ['key']),
            text: textAt(each, ['title']) || library.noName,
          }))}
        // What the new part may be is not what the old one was.
        onChosen={(next) => change(path, { stage: valueAt(wait, ['stage']), part: next })}
      />
      <SelectField
        path={[...path, 'opens']}
        label={library.opensWhen}
        none={library.atAnyTime}
        choices={opening.map((value) => ({ value, text: library.opens[value](title) }))}
      />
      <SelectField
        path={[...path, 'closes']}
        label={library.closesWhen}
        none={library.never}
        choices={closing.map((value) => ({ value, text: library.closes[value](title) }))}
      />
    </Item>
  );
}

function Item({
  list,
  index,
  name,
  children,
}: {
  readonly list: string;
  readonly index: number;
  readonly name: string;
  readonly children: ReactNode;
}): ReactNode {
  const { form } = useWords();
  const { content, change } = useForm();
  return (
    <div className="list-item" id={fieldId([list, index])} tabIndex={-1}>
      <div className="fields">{children}</div>
      <button
        type="button"
        className="icon-button"
        aria-label={`${form.remove}: ${name} ${String(index + 1)}`}
        onClick={() => change([], withoutItem(content, [list], index))}
      >
        <Trash2 size={20} aria-hidden />
      </button>
    </div>
  );
}
