import type { ReactNode } from 'react';
import { SelectField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { MeasureField } from '../../form/number-field.js';
import { listAt, textAt, type Value } from '../../form/values.js';
import { gramsOf, sortOf } from './amount-sorts.js';
import type { Share } from './shares.js';
import { usePastingWords } from './pasting-words.js';

const sizes = ['pieces', 'fats', 'fat'] as const;
type Size = (typeof sizes)[number];

/** How large the batch is made: for the pieces, to a weight of fats, or from what is left of one of them. */
export function SizeFields({ titleOf }: { readonly titleOf: (key: string) => string }): ReactNode {
  const pasting = usePastingWords();
  const { content, change } = useForm();
  const by = sizes.find((each) => each === textAt(content, ['size', 'by'])) ?? 'pieces';
  const fats = listAt(content, ['fats']) as unknown as readonly Share[];
  const keys = [...new Set(fats.flatMap(({ fat }) => (typeof fat === 'string' && fat !== '' ? [fat] : [])))];
  return (
    <div className="fields">
      <SelectField
        path={['size', 'by']}
        label={pasting.size}
        preset="pieces"
        hint={pasting.sizeHints[by]}
        choices={sizes.map((value) => ({ value, text: pasting.sizes[value] }))}
        onChosen={(value) => change(['size'], begun(value as Size | undefined, fats, keys))}
      />
      {by === 'fats' && (
        <MeasureField path={['size', 'grams']} label={pasting.sizeFats} dimension="mass" keep />
      )}
      {by === 'fat' && (
        <>
          <SelectField
            path={['size', 'fat']}
            label={pasting.sizeFat}
            choices={keys.map((value) => ({ value, text: titleOf(value) }))}
          />
          <MeasureField path={['size', 'grams']} label={pasting.sizeFatGrams} dimension="mass" keep />
        </>
      )}
    </div>
  );
}

/** What a size begins with: the weights that stand there, if they do. */
function begun(by: Size | undefined, fats: readonly Share[], keys: readonly string[]): Value {
  const inGrams = sortOf(fats) === 'grams';
  const [first] = fats;
  const size =
    by === 'fats'
      ? { by, grams: inGrams && gramsOf(fats) > 0 ? gramsOf(fats) : 1000 }
      : by === 'fat'
        ? { by, fat: keys[0], grams: inGrams ? first?.grams : '' }
        : { by: 'pieces' };
  return size as Value;
}
