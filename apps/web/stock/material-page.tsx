import type { ReactNode } from 'react';
import { useParams } from 'react-router';
import { SelectField } from '../form/fields.js';
import { MeasureField, NumberField } from '../form/number-field.js';
import { valueAt } from '../form/values.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useAmountText } from './amount-text.js';
import { EntryForm } from './entry-form.js';
import { Moves } from './moves.js';
import { Packs } from './packs-editor.js';
import { PurchaseForm } from './purchase-form.js';
import { isKnown } from './stock-page.js';
import { useStockWords } from './stock-words.js';
import type { KnownMaterial } from './use-choices.js';
import { useStock, type EntryNow, type StockLine } from './use-stock.js';
import { StockHead } from './stock-head.js';
import '../form/form.css';
import '../library/library.css';
import './stock.css';

/** One material: how much is there and why, a purchase, a count, packs and prices, and all that changed it. */
export default function MaterialPage(): ReactNode {
  const { key = '', unit = 'g' } = useParams();
  const words = useStockWords();
  const { titled } = useTexts();
  const { data, error, refetch } = useStock();
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  const line = data.materials.find((each) => each.key === key && each.unit === unit) ?? nothingOf(key, unit);
  const material = { key, unit: line.unit, title: line.title };
  return (
    <div className="stack">
      <StockHead back={{ to: '/makings/stock', text: words.toStock }} title={titled(key, material.title)} />
      <div className="kinds">
        <OnHand line={line} />
        <section className="card stack tight" aria-labelledby="count">
          <h2 id="count">{words.count}</h2>
          <p className="soft small">{words.countHint}</p>
          <AmountForm kind="count" material={material} />
        </section>
        <section className="card stack tight" aria-labelledby="buy">
          <h2 id="buy">{words.buy}</h2>
          <PurchaseForm currency={data.currency ?? ''} of={material} />
        </section>
        <Packs material={material} currency={data.currency} />
        <section className="card" aria-label={words.otherwise}>
          <details className="more">
            <summary>{words.otherwise}</summary>
            <AmountForm kind="used" material={material} />
          </details>
        </section>
        <Moves material={material} currency={data.currency} />
      </div>
    </div>
  );
}

function nothingOf(key: string, unit: string): StockLine {
  const words = key.replaceAll('-', ' ');
  return {
    ...{
      key,
      title: words.charAt(0).toUpperCase() + words.slice(1),
      unit: unit === 'piece' ? 'piece' : 'g',
      onHand: 0,
    },
    ...{ bought: 0, usedByRuns: 0, usedElse: 0, fromLeftovers: 0 },
  };
}

/** How much is there, and what that follows from. */
function OnHand({ line }: { readonly line: StockLine }): ReactNode {
  const words = useStockWords();
  const amount = useAmountText();
  const { dayTime } = useTimes();
  const { unit, from } = line;
  const reasons = [
    from === undefined
      ? undefined
      : from.at === undefined || line.from?.at === undefined
        ? words.began(amount(unit, from.amount))
        : words.counted(amount(unit, from.amount), dayTime(from.at)),
    line.bought > 0 ? words.sinceBought(amount(unit, line.bought)) : undefined,
    line.fromLeftovers > 0 ? words.sinceLeftovers(amount(unit, line.fromLeftovers)) : undefined,
    line.usedByRuns > 0 ? words.sinceRuns(amount(unit, line.usedByRuns)) : undefined,
    line.usedElse > 0 ? words.sinceElse(amount(unit, line.usedElse)) : undefined,
  ].filter((reason) => reason !== undefined);
  return (
    <section className="card stack tight" aria-labelledby="there">
      <h2 id="there">{words.there}</h2>
      <p className="big-figure numbers">{isKnown(line) ? amount(unit, line.onHand) : words.notCounted}</p>
      {isKnown(line) && line.missing !== undefined && (
        <p className="note amber small">{words.missing(amount(unit, line.missing))}</p>
      )}
      <ul className="small">
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </section>
  );
}

/** A count, or what was used otherwise. */
function AmountForm({
  kind,
  material,
}: {
  readonly kind: 'count' | 'used';
  readonly material: KnownMaterial;
}): ReactNode {
  const words = useStockWords();
  const label = kind === 'count' ? words.howMuch : words.amount;
  return (
    <EntryForm
      label={kind === 'count' ? words.count : words.otherwise}
      blank={{ kind }}
      entryOf={(content) =>
        ({
          kind: valueAt(content, ['kind']),
          material: material.key,
          title: material.title,
          unit: material.unit,
          amount: valueAt(content, [kind]),
        }) as unknown as EntryNow
      }
      fieldOf={(name) => (name === 'amount' ? kind : name)}
      said={() => (kind === 'count' ? words.countEntered : words.entered)}
      button={words.enter}
    >
      {() => (
        <div className="fields">
          {kind === 'used' && (
            <SelectField
              path={['kind']}
              label={words.what}
              choices={(['used', 'written-off'] as const).map((value) => ({
                value,
                text: words.whats[value],
              }))}
            />
          )}
          {material.unit === 'g' ? (
            <MeasureField path={[kind]} label={label} dimension="mass" />
          ) : (
            <NumberField path={[kind]} label={label} />
          )}
        </div>
      )}
    </EntryForm>
  );
}
