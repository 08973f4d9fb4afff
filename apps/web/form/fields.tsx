import type { ReactNode } from 'react';
import { useField } from './form-context.js';
import type { Path } from './values.js';

interface Common {
  readonly path: Path;
  readonly label: string;
  /** The label is read out but not shown, where the place of the field says enough to the eye. */
  readonly hidden?: boolean;
  readonly hint?: ReactNode;
}

/** What is around every field: its label, what it is for, what is wrong with it. */
export function FieldFrame({
  id,
  label,
  hidden,
  hint,
  wrong,
  children,
}: Omit<Common, 'path'> & {
  readonly id: string;
  readonly wrong: readonly string[];
  readonly children: ReactNode;
}): ReactNode {
  return (
    <div className="field">
      <label htmlFor={id} className={hidden === true ? 'visually-hidden' : undefined}>
        {label}
      </label>
      {children}
      {hint !== undefined && <p className="soft small">{hint}</p>}
      {wrong.length > 0 && (
        <p id={`${id}-wrong`} className="wrong">
          {wrong.join(' ')}
        </p>
      )}
    </div>
  );
}

/** A line of text. An empty one is absent unless `keep` says that it counts. */
export function TextField({
  path,
  list,
  keep = false,
  isName = false,
  onSet,
  ...frame
}: Common & {
  readonly list?: string;
  readonly keep?: boolean;
  /** A name of some register, in no language: nothing to translate or to spell. */
  readonly isName?: boolean;
  /** Instead of putting the text at the path. */
  readonly onSet?: (text: string | undefined) => void;
}): ReactNode {
  const { value, set, id, wrong, described } = useField(path);
  return (
    <FieldFrame {...frame} id={id} wrong={wrong}>
      <input
        id={id}
        value={typeof value === 'string' ? value : ''}
        list={list}
        translate={isName ? 'no' : undefined}
        spellCheck={isName ? false : undefined}
        autoComplete="off"
        onChange={({ target }) => (onSet ?? set)(target.value === '' && !keep ? undefined : target.value)}
        {...described}
      />
    </FieldFrame>
  );
}

export interface Choice {
  readonly value: string;
  readonly text: string;
}
export interface ChoiceGroup {
  readonly title: string;
  readonly choices: readonly Choice[];
}

/** One of several. @param none what choosing nothing is called; absent: one has to be chosen */
export function SelectField({
  path,
  choices,
  none,
  preset,
  onChosen,
  ...frame
}: Common & {
  readonly choices: readonly (Choice | ChoiceGroup)[];
  readonly none?: string;
  /** What counts while nothing was chosen. */
  readonly preset?: string;
  /** Instead of only putting the choice at the path. */
  readonly onChosen?: (value: string | undefined) => void;
}): ReactNode {
  const { value, set, id, wrong, described } = useField(path);
  const chosen = typeof value === 'string' ? value : (preset ?? '');
  const known = choices.flatMap((each) => ('choices' in each ? each.choices : [each]));
  return (
    <FieldFrame {...frame} id={id} wrong={wrong}>
      <select
        id={id}
        value={chosen}
        onChange={({ target }) => {
          const next = target.value === '' ? undefined : target.value;
          if (onChosen === undefined) set(next);
          else onChosen(next);
        }}
        {...described}
      >
        {(none !== undefined || chosen === '') && <option value="">{none ?? '…'}</option>}
        {chosen !== '' && !known.some((each) => each.value === chosen) && (
          <option value={chosen}>{chosen}</option>
        )}
        {choices.map((each) =>
          'choices' in each ? (
            <optgroup key={each.title} label={each.title}>
              {each.choices.map(option)}
            </optgroup>
          ) : (
            option(each)
          ),
        )}
      </select>
    </FieldFrame>
  );
}

function option({ value, text }: Choice): ReactNode {
  return (
    <option key={value} value={value}>
      {text}
    </option>
  );
}

/** Yes or no. */
export function CheckField({ path, label, hint }: Omit<Common, 'hidden'>): ReactNode {
  const { value, set, id, wrong, described } = useField(path);
  return (
    <div className="field check">
      <label htmlFor={id}>
        <input
          id={id}
          type="checkbox"
          checked={value === true}
          onChange={({ target }) => set(target.checked)}
          {...described}
        />
        <span>{label}</span>
      </label>
      {hint !== undefined && <p className="soft small">{hint}</p>}
      {wrong.length > 0 && (
        <p id={`${id}-wrong`} className="wrong">
          {wrong.join(' ')}
        </p>
      )}
    </div>
  );
}
