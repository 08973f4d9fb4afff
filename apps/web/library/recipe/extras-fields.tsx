import type { ReactNode } from 'react';
import { NumberField } from '../../form/number-field.js';
import { useWords } from '../../words/words.js';
import { AdditionsFields } from './additions-fields.js';
import { FragrancesFields } from './fragrances-fields.js';

/** Hardener, fragrance and whatever else goes in. */
export function ExtrasFields(): ReactNode {
  const { library } = useWords();
  return (
    <section className="card stack">
      <h2>{library.hardener}</h2>
      <div className="fields">
        <NumberField path={['sodiumLactatePercent']} label={library.lactate} unit="%" preset={0} />
        <NumberField path={['saltPercent']} label={library.salt} unit="%" preset={0} />
        <NumberField path={['sugarPercent']} label={library.sugar} unit="%" preset={0} />
      </div>
      <FragrancesFields path={['fragrances']} />
      <AdditionsFields path={['additions']} />
      <p className="soft small">{library.coloursElsewhere}</p>
    </section>
  );
}
