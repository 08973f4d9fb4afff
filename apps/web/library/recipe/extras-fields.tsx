import type { ReactNode } from 'react';
import { additionKinds } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import { useWords } from '../../words/words.js';
import { keysIn } from '../keys-in.js';
import { newKey } from '../new-key.js';
import { FragrancesFields } from './fragrances-fields.js';

/** Hardener, fragrance and whatever else goes in. */
export function ExtrasFields(): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  return (
    <section className="card stack">
      <h2>{library.hardener}</h2>
      <div className="fields">
        <NumberField path={['sodiumLactatePercent']} label={library.lactate} unit="%" preset={0} />
        <NumberField path={['saltPercent']} label={library.salt} unit="%" preset={0} />
        <NumberField path={['sugarPercent']} label={library.sugar} unit="%" preset={0} />
      </div>
      <FragrancesFields />
      <ListEditor
        path={['additions']}
        title={library.additions}
        most={10}
        make={() => ({ key: newKey('addition', keysIn(content, 'additions')), kind: 'clay', percent: 1 })}
      >
        {(path) => (
          <div className="fields">
            <TextField path={[...path, 'title']} label={library.addition} />
            <SelectField
              path={[...path, 'kind']}
              label={library.additionKind}
              choices={additionKinds.map((value) => ({ value, text: library.additionKinds[value] }))}
            />
            <NumberField path={[...path, 'percent']} label={library.ofFats} unit="%" />
          </div>
        )}
      </ListEditor>
      <p className="soft small">{library.coloursElsewhere}</p>
    </section>
  );
}
