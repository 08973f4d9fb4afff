import type { ReactNode } from 'react';
import { CheckField, SelectField, TextField } from '../form/fields.js';
import { MeasureField, NumberField } from '../form/number-field.js';
import { textAt, valueAt, type Value } from '../form/values.js';
import { useTexts } from '../look/use-texts.js';
import { newKey } from '../library/new-key.js';
import { useWorkshop } from '../library/shelf-calls.js';
import { useAmountText } from './amount-text.js';
import { EntryForm } from './entry-form.js';
import { useStockWords } from './stock-words.js';
import { ANOTHER, nameOf, useMaterialChoices, type KnownMaterial } from './use-choices.js';
import { useChangeFacts, useStock, type EntryNow, type Unit } from './use-stock.js';
import { rounded, withPack } from './packs.js';

const blank = { packs: 1, remember: true };

/** Takes down what was bought: so many packs of a size. @param of the material; absent: it is to be chosen */
export function PurchaseForm({
  currency,
  of,
}: {
  readonly currency: string;
  readonly of?: KnownMaterial;
}): ReactNode {
  const words = useStockWords();
  const amount = useAmountText();
  const { titled } = useTexts();
  const choices = useMaterialChoices();
  const { data: stock } = useStock();
  const { data: workshop } = useWorkshop();
  const change = useChangeFacts();
  const chosen = (content: Value): KnownMaterial | undefined => {
    if (of !== undefined) return of;
    const name = textAt(content, ['material']);
    if (name !== ANOTHER) return choices.known.get(name);
    const title = textAt(content, ['title']).trim();
    const taken = [...choices.known.values()].map(({ key }) => key);
    const unit: Unit = valueAt(content, ['unit']) === 'piece' ? 'piece' : 'g';
    return title === '' ? undefined : { key: newKey(title, taken), title, unit };
  };
  const entryOf = (content: Value): EntryNow => {
    const material = chosen(content);
    const [packs, size, price] = ['packs', 'size', 'price'].map((name) => valueAt(content, [name]));
    const together = (each: Value): Value =>
      typeof packs === 'number' && typeof each === 'number'
        ? rounded(packs * each)
        : typeof each === 'number'
          ? packs
          : each;
    const known = stock?.materials.find(
      (line) => material !== undefined && nameOf(line) === nameOf(material),
    );
    return {
      kind: 'purchase',
      material: material?.key,
      // The name that it ships with stays, so that each language has its own.
      ...(known === undefined && { title: material?.title }),
      unit: material?.unit,
      amount: together(size),
      ...(price !== undefined && { price: together(price) }),
    } as unknown as EntryNow;
  };
  const packsOf = (
    content: Value,
  ): readonly { readonly size: number; readonly price?: number | undefined }[] => {
    const material = chosen(content);
    return workshop?.facts.materials.find(({ key }) => key === material?.key)?.packs ?? [];
  };
  return (
    <EntryForm
      label={words.buy}
      blank={of === undefined ? blank : { ...blank, ...firstPack(packsOf(blank)) }}
      entryOf={entryOf}
      fieldOf={(name) => (name === 'amount' ? 'size' : name)}
      said={(entry) =>
        entry.kind === 'purchase'
          ? words.bought(amount(entry.unit ?? 'g', Number(entry.amount)), titleOf(entry.material))
          : ''
      }
      button={words.enter}
      onWritten={(content, became) => {
        const material = chosen(content);
        if (became === 'waiting') return;
        const [size, price] = [valueAt(content, ['size']), valueAt(content, ['price'])];
        if (valueAt(content, ['remember']) !== true || material === undefined || typeof size !== 'number')
          return;
        const pack = { size, ...(typeof price === 'number' && { price }) };
        change.mutate((facts) => withPack(facts, material, pack));
      }}
    >
      {(content, set) => {
        const material = chosen(content);
        const unit = material?.unit ?? (valueAt(content, ['unit']) === 'piece' ? 'piece' : 'g');
        return (
          <>
            {of === undefined && (
              <SelectField
                path={['material']}
                label={words.material}
                choices={choices.groups}
                onChosen={(next) => {
                  const base = { ...blank, material: next };
                  set({ ...base, ...firstPack(packsOf(base)) });
                }}
              />
            )}
            {textAt(content, ['material']) === ANOTHER && (
              <div className="fields">
                <TextField path={['title']} label={words.name} />
                <SelectField
                  path={['unit']}
                  label={words.unit}
                  preset="g"
                  choices={(['g', 'piece'] as const).map((value) => ({ value, text: words.units[value] }))}
                />
              </div>
            )}
            <div className="fields">
              <NumberField path={['packs']} label={words.packs} />
              {unit === 'g' ? (
                <MeasureField path={['size']} label={words.packSize} dimension="mass" />
              ) : (
                <NumberField path={['size']} label={words.packSize} />
              )}
              <NumberField path={['price']} label={words.packPrice(currency)} />
            </div>
            <CheckField path={['remember']} label={words.remember} />
          </>
        );
      }}
    </EntryForm>
  );

  function titleOf(key: string): string {
    const all = of === undefined ? [...choices.known.values()] : [of];
    return titled(key, all.find((each) => each.key === key)?.title ?? key);
  }
}

function firstPack(packs: readonly { readonly size: number; readonly price?: number | undefined }[]): {
  readonly size?: number;
  readonly price?: number;
} {
  const [first] = packs;
  if (first === undefined) return {};
  return { size: first.size, ...(first.price !== undefined && { price: first.price }) };
}
