import type { ReactNode } from 'react';
import { fragranceBehaviours, fragranceKinds, limitCategories } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import type { Path } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { keysAt } from '../keys-in.js';
import { newKey } from '../new-key.js';

/** Fragrance and essential oils, each with its limit and what it does. */
export function FragrancesFields({ path: list }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  return (
    <ListEditor
      path={list}
      title={library.fragrances}
      add={library.addFragrance}
      most={8}
      make={() => ({ key: newKey('fragrance', keysAt(content, list)), percent: 3 })}
    >
      {(path) => <FragranceFields path={path} />}
    </ListEditor>
  );
}

function FragranceFields({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  return (
    <div className="stack tight">
      <div className="fields">
        <TextField path={[...path, 'title']} label={library.name} />
        <SelectField
          path={[...path, 'kind']}
          label={library.fragranceKind}
          preset="fragrance-oil"
          choices={fragranceKinds.map((value) => ({ value, text: library.fragranceKinds[value] }))}
        />
        <NumberField path={[...path, 'percent']} label={library.ofFats} unit="%" />
        <SelectField
          path={[...path, 'behaviour']}
          label={library.behaviour}
          preset="unknown"
          choices={fragranceBehaviours.map((value) => ({ value, text: library.behaviours[value] }))}
        />
        <NumberField
          path={[...path, 'supplierLimitPercent']}
          label={library.supplierLimit}
          hint={library.supplierLimitHint}
          unit="%"
        />
        <SelectField
          path={[...path, 'limitCategory']}
          label={library.limitCategory}
          preset="9"
          choices={limitCategories.map((value) => ({
            value,
            text: value === '9' ? library.soapCategory : value,
          }))}
        />
        <NumberField path={[...path, 'vanillinPercent']} label={library.vanillin} unit="%" preset={0} />
      </div>
      <ListEditor
        path={[...path, 'allergens']}
        title={library.allergens}
        add={library.addAllergen}
        make={() => ({})}
      >
        {(of) => (
          <div className="fields">
            <TextField path={[...of, 'name']} label={library.allergenName} />
            <NumberField path={[...of, 'percent']} label={library.ofFragrance} unit="%" />
          </div>
        )}
      </ListEditor>
    </div>
  );
}
