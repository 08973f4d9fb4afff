import { useEffect, type ReactNode } from 'react';
import { Link, useSearchParams } from 'react-router';
import { SelectField } from '../../../form/fields.js';
import { FormContext, useForm } from '../../../form/form-context.js';
import { NumberField } from '../../../form/number-field.js';
import { useDraft } from '../../../form/use-draft.js';
import { textAt, valueAt, type Group, type Value } from '../../../form/values.js';
import { useWords } from '../../../words/words.js';
import type { DesignAround } from '../design-around.js';
import { madeIn, newForPiece } from '../made-for-piece.js';
import { PatternPicture } from './pattern-picture.js';
import { designAfter, MOST_LAYERS, patternNames, patterns as known, type Question } from './patterns.js';
import { usePieceTitles } from './use-piece-titles.js';
import './patterns.css';

/** How a new piece is built: one of a few patterns, and what it has to be told. */
export function ChoosePattern({ around }: { readonly around: DesignAround }): ReactNode {
  const { patterns: words } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const [search, setSearch] = useSearchParams();
  // Kept like the piece itself, so that a recipe can be described in between.
  const draft = useDraft('designs.pattern', null, {});
  const chosen = patternNames.find((name) => name === valueAt(draft.content, ['pattern']));
  const made = madeIn(search);
  useEffect(() => {
    if (made === null || made.part !== '') return;
    draft.change([made.field], made.key);
    setSearch({}, { replace: true });
    // Once for each address: drawing again before the address has changed must not take it again.
    // oxlint-disable-next-line hooks/exhaustive-deps
  }, [search]);
  const only = (list: readonly { readonly key: string }[]): string | undefined =>
    list.length === 1 ? list[0]?.key : undefined;
  const build = (): void => {
    if (chosen === undefined) return;
    const number = (field: string): number | undefined => {
      const value = valueAt(draft.content, [field]);
      return typeof value === 'number' ? value : undefined;
    };
    const answers = {
      recipe: textAt(draft.content, ['recipe']) || only(around.recipes),
      mould: textAt(draft.content, ['mould']) || only(around.moulds),
      layers: number('layers'),
      colours: number('colours'),
      pieces: number('pieces'),
    };
    change([], { ...(content as Group), ...(designAfter(chosen, answers, titles) as Group) });
    draft.drop();
  };
  return (
    <fieldset className="card stack">
      <legend className="visually-hidden">{words.title}</legend>
      <div className="stack tight">
        <h2>{words.title}</h2>
        <p className="soft">{words.lead}</p>
      </div>
      <div className="pattern-cards">
        {patternNames.map((name) => (
          <label key={name} className="pattern-card">
            <input
              type="radio"
              name="pattern"
              value={name}
              checked={name === chosen}
              onChange={() => draft.change(['pattern'], name)}
            />
            <PatternPicture name={name} />
            <span className="stack tight">
              <strong>{words.names[name]}</strong>
              <span className="soft small">{words.steps[name]}</span>
            </span>
          </label>
        ))}
      </div>
      {chosen !== undefined && (
        <FormContext value={{ content: draft.content, change: draft.change, issues: [] }}>
          <PatternFields
            around={around}
            recipe={only(around.recipes)}
            mould={only(around.moulds)}
            asks={known[chosen].asks}
          />
          <p>
            <button type="button" className="button main" onClick={build}>
              {words.take}
            </button>
          </p>
        </FormContext>
      )}
    </fieldset>
  );
}

/** @param recipe the only one there is; likewise `mould` */
function PatternFields({
  around,
  recipe,
  mould,
  asks,
}: {
  readonly around: DesignAround;
  readonly recipe: string | undefined;
  readonly mould: string | undefined;
  readonly asks: readonly Question[];
}): ReactNode {
  const { patterns: words } = useWords();
  const choices = (
    list: readonly { readonly key: string; readonly title: string }[],
  ): { value: string; text: string }[] => list.map(({ key, title }) => ({ value: key, text: title }));
  return (
    <div className="fields">
      <SelectField
        path={['recipe']}
        label={words.recipe}
        none={words.later}
        {...(recipe !== undefined && { preset: recipe })}
        choices={choices(around.recipes)}
        hint={<Link to={newForPiece('recipes', 'new', '')}>{words.newRecipe}</Link>}
      />
      <SelectField
        path={['mould']}
        label={words.mould}
        none={words.later}
        {...(mould !== undefined && { preset: mould })}
        choices={choices(around.moulds)}
        hint={<Link to={newForPiece('moulds', 'new', '')}>{words.newMould}</Link>}
      />
      {asks.includes('layers') && <SelectCount field="layers" label={words.layers} least={1} preset={2} />}
      {asks.includes('colours') && <SelectCount field="colours" label={words.colours} least={2} preset={3} />}
      {asks.includes('pieces') && <NumberField path={['pieces']} label={words.piecesFromLoaf} preset={8} />}
    </div>
  );
}

/** Chosen, not typed: one tap, and no number that no piece could have. */
function SelectCount({
  field,
  label,
  least,
  preset,
}: {
  readonly field: 'layers' | 'colours';
  readonly label: string;
  readonly least: number;
  readonly preset: number;
}): ReactNode {
  const { content, change } = useForm();
  const value = valueAt(content, [field]);
  return (
    <div className="field">
      <label htmlFor={field}>{label}</label>
      <select
        id={field}
        value={typeof value === 'number' ? value : preset}
        onChange={({ target }) => change([field], Number(target.value) satisfies Value)}
      >
        {Array.from({ length: MOST_LAYERS - least + 1 }, (_, i) => (
          <option key={i} value={i + least}>
            {i + least}
          </option>
        ))}
      </select>
    </div>
  );
}
