import type { ReactNode } from 'react';
import { additionKinds, fragranceBehaviours } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import { listAt, valueAt, type Value } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { newKey } from '../new-key.js';

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
      <Fragrance />
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

function Fragrance(): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  if (valueAt(content, ['fragrance']) === undefined) {
    return (
      <p>
        <button
          type="button"
          className="button"
          onClick={() => change(['fragrance'], { percent: 3, behaviour: 'mild' })}
        >
          {library.addFragrance}
        </button>
      </p>
    );
  }
  return (
    <fieldset className="stack tight">
      <legend>{library.fragrance}</legend>
      <div className="fields">
        <TextField path={['fragrance', 'title']} label={library.name} />
        <NumberField path={['fragrance', 'percent']} label={library.ofFats} unit="%" />
        <NumberField
          path={['fragrance', 'supplierLimitPercent']}
          label={library.supplierLimit}
          hint={library.supplierLimitHint}
          unit="%"
        />
        <SelectField
          path={['fragrance', 'behaviour']}
          label={library.behaviour}
          preset="mild"
          choices={fragranceBehaviours.map((value) => ({ value, text: library.behaviours[value] }))}
        />
        <NumberField path={['fragrance', 'vanillinPercent']} label={library.vanillin} unit="%" preset={0} />
      </div>
      <p>
        <button type="button" className="button plain" onClick={() => change(['fragrance'], undefined)}>
          {library.dropFragrance}
        </button>
      </p>
    </fieldset>
  );
}

/** Short names in use in one of the lists of what is edited. */
function keysIn(content: Value, list: string): string[] {
  return listAt(content, [list]).flatMap((each) => {
    const key = valueAt(each, ['key']);
    return typeof key === 'string' ? [key] : [];
  });
}
