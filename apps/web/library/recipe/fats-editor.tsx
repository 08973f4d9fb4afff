import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import type { Fat } from '#contract';
import type { Schemas } from '../../api/client.js';
import { SelectField, type Choice } from '../../form/fields.js';
import { fieldId, useForm } from '../../form/form-context.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { listAt, valueAt, withItem, withoutItem, withValue } from '../../form/values.js';
import { useAmounts } from '../../look/amounts.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { useShippedFats, useShippedLiquids } from '../shelf-calls.js';
import { gramsOf, sortOf, told, type AmountSort } from './amount-sorts.js';
import { withAdditions } from './pasted-additions.js';
import { PasteRecipe } from './paste-recipe.js';
import { inShares, linesOf } from './liquid-lines.js';
import type { ReadRecipeText } from './read-pasted.js';
import { madeHundred, numberOf, sumOf, type Share } from './shares.js';
import { SizeFields } from './size-fields.js';
import { usePastingWords } from './pasting-words.js';

/** The fats and their shares or weights, with a picture of them and their sum; pasted in or chosen one by one. */
export function FatsEditor({
  own,
  batch,
}: {
  readonly own: readonly Fat[];
  /** As it was worked out last; absent: not yet. */
  readonly batch?: Schemas['BatchAmounts'] | undefined;
}): ReactNode {
  const { library, form } = useWords();
  const pasting = usePastingWords();
  const { content, change } = useForm();
  const { titled, language } = useTexts();
  const { mass } = useAmounts();
  const shipped = (useShippedFats().data ?? []).map(({ key, title }) => ({ key, title: titled(key, title) }));
  const liquids = (useShippedLiquids().data ?? []).map(({ key, title }) => ({
    key,
    title: titled(key, title),
  }));
  const shares = listAt(content, ['fats']) as unknown as readonly Share[];
  const sort = sortOf(shares);
  const wholeG = numberOf(valueAt(content, ['size', 'grams']));
  const isOfFats = valueAt(content, ['size', 'by']) === 'fats' && wholeG > 0;
  const set = (next: readonly Share[]): void => change(['fats'], next as never);
  const turn = (next: AmountSort): void => {
    const turned = withValue(content, ['fats'], told(shares, next, isOfFats ? wholeG : undefined) as never);
    const lines = listAt(content, ['liquids']);
    // Liquids have weights beside fats that have, and nowhere else.
    const isBare = next === 'grams' || lines.length === 0;
    change([], isBare ? turned : withValue(turned, ['liquids'], inShares(lines, batch)));
  };
  const take = ({ fats, liquids: poured, additions }: ReadRecipeText): void => {
    const added = withAdditions(listAt(content, ['additions']), additions, library.additionKinds);
    const taken = withValue(withValue(content, ['fats'], fats), ['additions'], added);
    // Liquids that the text does not name stay as they are.
    change([], poured.length === 0 ? taken : withValue(taken, ['liquids'], linesOf(poured)));
  };
  const choices = [
    ...(own.length === 0 ? [] : [{ title: library.ownFats, choices: own.map(choiceOf) }]),
    {
      title: library.shippedFats,
      choices: shipped.map(choiceOf).sort((a, b) => a.text.localeCompare(b.text, language)),
    },
  ];
  const titleOf = (key: unknown): string =>
    [...own, ...shipped, ...liquids].find((each) => each.key === key)?.title ??
    (typeof key === 'string' ? key : '…');
  return (
    <section className="card stack" aria-labelledby={fieldId(['fats'])}>
      <h2 id={fieldId(['fats'])} tabIndex={-1}>
        {library.fats}
      </h2>
      <PasteRecipe own={own} titleOf={titleOf} onTake={take} />
      <div className="field">
        <label htmlFor="amounts-in">{pasting.amountsIn}</label>
        <select id="amounts-in" value={sort} onChange={({ target }) => turn(target.value as AmountSort)}>
          <option value="percent">{pasting.sorts.percent}</option>
          <option value="grams">{pasting.sorts.grams}</option>
        </select>
      </div>
      <SharePicture shares={told(shares, 'percent')} titleOf={titleOf} />
      <ul className="rows">
        {shares.map((share, i) => (
          // Rows have no name of their own, and two may hold the same fat while it is being changed.
          <li key={i} className="fat-row">
            <span className={`swatch colour-${String((i % 5) + 1)}`} aria-hidden />
            <SelectField
              path={['fats', i, 'fat']}
              label={`${library.fat} ${String(i + 1)}`}
              hidden
              choices={choices}
            />
            {sort === 'grams' ? (
              <MeasureField
                path={['fats', i, 'grams']}
                label={`${pasting.weight}: ${titleOf(share.fat)}`}
                hidden
                keep
                dimension="mass"
              />
            ) : (
              <NumberField
                path={['fats', i, 'percent']}
                label={`${library.share}: ${titleOf(share.fat)}`}
                hidden
                unit="%"
              />
            )}
            <button
              type="button"
              className="icon-button"
              aria-label={`${form.remove}: ${titleOf(share.fat)}`}
              onClick={() => set(listAt(withoutItem(content, ['fats'], i), ['fats']) as never)}
            >
              <Trash2 size={20} aria-hidden />
            </button>
          </li>
        ))}
      </ul>
      <div className="row apart">
        <button
          type="button"
          className="button"
          onClick={() =>
            change(
              [],
              withItem(content, ['fats'], sort === 'grams' ? { grams: '' } : { percent: left(shares) }),
            )
          }
        >
          {library.addFat}
        </button>
        {sort === 'grams' ? (
          <p role="status" className="sum right">
            <strong className="numbers">{pasting.total(mass(gramsOf(shares)))}</strong>
          </p>
        ) : (
          <Sum shares={shares} onStretch={() => set(madeHundred(shares))} />
        )}
      </div>
      <SizeFields titleOf={titleOf} />
    </section>
  );
}

function Sum({
  shares,
  onStretch,
}: {
  readonly shares: readonly Share[];
  readonly onStretch: () => void;
}): ReactNode {
  const { library } = useWords();
  const { percent } = useAmounts();
  const sum = sumOf(shares);
  const by = percent(Math.abs(sum - 100), 2);
  return (
    <div className="row">
      <p role="status" className={sum === 100 ? 'sum right' : 'sum'}>
        <strong className="numbers">{library.sum(percent(sum, 2))}</strong>{' '}
        <span className="small">
          {sum === 100 ? `✓ ${library.sumRight}` : sum > 100 ? library.sumOver(by) : library.sumUnder(by)}
        </span>
      </p>
      {sum !== 100 && sum > 0 && (
        <button type="button" className="button" onClick={onStretch}>
          {library.makeHundred}
        </button>
      )}
    </div>
  );
}

/** The shares as layers poured side by side; decoration, for the figures say the same. */
function SharePicture({
  shares,
  titleOf,
}: {
  readonly shares: readonly Share[];
  readonly titleOf: (key: unknown) => string;
}): ReactNode {
  const whole = Math.max(100, sumOf(shares));
  return (
    <div className="share-picture" aria-hidden>
      {shares.map(({ fat, percent }, i) => (
        <span
          key={i}
          className={`colour-${String((i % 5) + 1)}`}
          style={{ width: `${String(typeof percent === 'number' ? (100 * percent) / whole : 0)}%` }}
          title={titleOf(fat)}
        />
      ))}
    </div>
  );
}

/** What a new fat gets: whatever is still free. */
function left(shares: readonly Share[]): number | undefined {
  const free = Math.round((100 - sumOf(shares)) * 100) / 100;
  return free > 0 ? free : undefined;
}

function choiceOf({ key, title }: { readonly key: string; readonly title: string }): Choice {
  return { value: key, text: title };
}
