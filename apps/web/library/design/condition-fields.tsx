import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { SelectField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { LengthField } from '../../form/length-field.js';
import { listAt, valueAt, withItem, withoutItem, type Value, textAt } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { useUnsaidTexts } from './condition-texts.js';
import { conditionsOf } from './design-edits.js';
import { statesOf } from './states-of.js';

/** When a stage may begin: after another stage, or by what the soap is. */
export function ConditionFields({ stage }: { readonly stage: Value }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const { links, waits } = conditionsOf(content, stage);
  const unsaid = useUnsaidTexts(stage);
  const others = listAt(content, ['stages']).filter((each) => valueAt(each, ['key']) !== stage);
  const firstPart = valueAt(content, ['parts', 0, 'key']);
  return (
    <fieldset className="stack tight">
      <legend>{library.mayBegin}</legend>
      {unsaid.map((text) => (
        <p key={text} className="small">
          {text}
        </p>
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
              change([], withItem(content, ['links'], { from, to: stage }));
            }}
          >
            + {library.addLink}
          </button>
        )}
        <button
          type="button"
          className="button plain"
          onClick={() => change([], withItem(content, ['waits'], { stage, part: firstPart }))}
        >
          + {library.addWait}
        </button>
      </div>
    </fieldset>
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
          text: textAt(each, ['title']),
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
            text: textAt(each, ['title']),
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
    <div className="list-item">
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
