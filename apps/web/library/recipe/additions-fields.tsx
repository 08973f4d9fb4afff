import type { ReactNode } from 'react';
import { additionKinds } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import type { Path } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { keysAt } from '../keys-in.js';
import { newKey } from '../new-key.js';

/** Clay, plants and whatever else goes into a batter or a portion of it. */
export function AdditionsFields({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  return (
    <ListEditor
      path={path}
      title={library.additions}
      most={10}
      make={() => ({ key: newKey('addition', keysAt(content, path)), kind: 'clay', percent: 1 })}
    >
      {(item) => (
        <div className="fields">
          <TextField path={[...item, 'title']} label={library.addition} />
          <SelectField
            path={[...item, 'kind']}
            label={library.additionKind}
            choices={additionKinds.map((value) => ({ value, text: library.additionKinds[value] }))}
          />
          <NumberField path={[...item, 'percent']} label={library.ofFats} unit="%" />
        </div>
      )}
    </ListEditor>
  );
}
