import { useState, type ReactNode } from 'react';
import { FormContext } from '../form/form-context.js';
import { MeasureField, NumberField } from '../form/number-field.js';
import { valueAt, withValue, type Value } from '../form/values.js';
import { useAmounts } from '../look/amounts.js';
import { useWorkshop } from '../library/shelf-calls.js';
import { Failed } from '../shell/states.js';
import { useAmountText } from './amount-text.js';
import { withPack, withPacks } from './packs.js';
import { useStockWords } from './stock-words.js';
import type { KnownMaterial } from './use-choices.js';
import { useChangeFacts } from './use-stock.js';

/** The sizes that a material is sold in, and what they cost. */
export function Packs({
  material,
  currency,
}: {
  readonly material: KnownMaterial;
  readonly currency: string | undefined;
}): ReactNode {
  const words = useStockWords();
  const amount = useAmountText();
  const { money } = useAmounts();
  const { data } = useWorkshop();
  const change = useChangeFacts();
  const [content, setContent] = useState<Value>({});
  const packs = data?.facts.materials.find(({ key }) => key === material.key)?.packs ?? [];
  const [size, price] = [valueAt(content, ['newSize']), valueAt(content, ['newPrice'])];
  return (
    <section className="card stack tight" aria-labelledby="packs">
      <h2 id="packs">{words.packsTitle}</h2>
      <p className="soft small">{words.packsHint}</p>
      {packs.length === 0 && <p className="soft">{words.noPacks}</p>}
      <ul className="things">
        {packs.map((pack) => (
          <li key={pack.size} className="row apart">
            <span>
              {words.pack(
                amount(material.unit, pack.size),
                pack.price === undefined ? words.noPrice : money(pack.price, currency),
              )}
            </span>
            <button
              type="button"
              className="button plain"
              aria-label={words.removePackOf(amount(material.unit, pack.size))}
              disabled={change.isPending}
              onClick={() =>
                change.mutate((facts) =>
                  withPacks(facts, material, (before) => before.filter((each) => each.size !== pack.size)),
                )
              }
            >
              {words.removePack}
            </button>
          </li>
        ))}
      </ul>
      <FormContext
        value={{
          content,
          change: (path, value) => setContent((before: Value) => withValue(before, path, value)),
          issues: [],
        }}
      >
        <div className="fields">
          {material.unit === 'g' ? (
            <MeasureField path={['newSize']} label={words.packSize} dimension="mass" />
          ) : (
            <NumberField path={['newSize']} label={words.packSize} />
          )}
          <NumberField path={['newPrice']} label={words.packPrice(currency ?? '')} />
        </div>
      </FormContext>
      {change.error !== null && <Failed error={change.error} again={() => change.reset()} />}
      <p>
        <button
          type="button"
          className="button"
          disabled={change.isPending || typeof size !== 'number' || typeof price === 'string'}
          onClick={() => {
            if (typeof size !== 'number') return;
            const pack = { size, ...(typeof price === 'number' && { price }) };
            change.mutate((facts) => withPack(facts, material, pack), { onSuccess: () => setContent({}) });
          }}
        >
          {words.addPack}
        </button>
      </p>
    </section>
  );
}
