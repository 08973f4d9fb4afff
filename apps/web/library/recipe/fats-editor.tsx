import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import type { Fat } from '#contract';
import { SelectField, type Choice } from '../../form/fields.js';
import { fieldId, useForm } from '../../form/form-context.js';
import { NumberField } from '../../form/number-field.js';
import { listAt, withItem, withoutItem } from '../../form/values.js';
import { useAmounts } from '../../look/amounts.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { useShippedFats } from '../shelf-calls.js';
import { madeHundred, sumOf, type Share } from './shares.js';

/** The fats and their shares, with a picture of them and their sum. */
export function FatsEditor({ own }: { readonly own: readonly Fat[] }): ReactNode {
  const { library, form } = useWords();
  const { content, change } = useForm();
  const { titled, language } = useTexts();
  const shipped = (useShippedFats().data ?? []).map(({ key, title }) => ({ key, title: titled(key, title) }));
  const shares = listAt(content, ['fats']) as unknown as readonly Share[];
  const set = (next: readonly Share[]): void => change(['fats'], next as never);
  const choices = [
    ...(own.length === 0 ? [] : [{ title: library.ownFats, choices: own.map(choiceOf) }]),
    {
      title: library.shippedFats,
      choices: shipped.map(choiceOf).sort((a, b) => a.text.localeCompare(b.text, language)),
    },
  ];
  const titleOf = (key: unknown): string =>
    [...own, ...shipped].find((each) => each.key === key)?.title ?? (typeof key === 'string' ? key : '…');
  return (
    <section className="card stack" aria-labelledby={fieldId(['fats'])}>
      <h2 id={fieldId(['fats'])} tabIndex={-1}>
        {library.fats}
      </h2>
      <SharePicture shares={shares} titleOf={titleOf} />
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
            <NumberField
              path={['fats', i, 'percent']}
              label={`${library.share}: ${titleOf(share.fat)}`}
              hidden
              unit="%"
            />
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
          onClick={() => change([], withItem(content, ['fats'], { percent: left(shares) }))}
        >
          {library.addFat}
        </button>
        <Sum shares={shares} onStretch={() => set(madeHundred(shares))} />
      </div>
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
