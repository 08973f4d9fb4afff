import type { ReactNode } from 'react';
import { TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import { listAt, textAt, type Path } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { newKey } from '../new-key.js';
import { ColourFields } from './colour-fields.js';

/** What a pour is split into: each with its share and its colours; one share may stay open and is the rest. */
export function PortionFields({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const taken = listAt(content, path).map((each) => textAt(each, ['key']));
  return (
    <ListEditor
      path={path}
      title={library.portions}
      most={12}
      make={() => {
        const title = `${library.colour} ${String(taken.length + 1)}`;
        return { key: newKey(title, taken), title };
      }}
    >
      {(item) => (
        <div className="stack tight">
          <div className="fields">
            <TextField path={[...item, 'title']} label={library.name} />
            <NumberField path={[...item, 'sharePercent']} label={library.portionShare} unit="%" />
          </div>
          <ColourFields path={[...item, 'colourants']} />
        </div>
      )}
    </ListEditor>
  );
}
