import type { ReactNode } from 'react';
import { TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { listAt, textAt, valueAt, type Path } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { newKey } from '../new-key.js';
import { AdditionsFields } from '../recipe/additions-fields.js';
import { FragrancesFields } from '../recipe/fragrances-fields.js';
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
            <SizeField path={item} />
          </div>
          <ColourFields path={[...item, 'colourants']} />
          <details className="more">
            <summary>{library.portionOwn}</summary>
            <div className="stack">
              <FragrancesFields path={[...item, 'fragrances']} />
              <AdditionsFields path={[...item, 'additions']} />
            </div>
          </details>
        </div>
      )}
    </ListEditor>
  );
}

/** Its share or its weight, or neither: once one of the two stands there, the other is not asked. */
function SizeField({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const has = (field: string): boolean => valueAt(content, [...path, field]) !== undefined;
  return (
    <>
      {(has('sharePercent') || !has('grams')) && (
        <NumberField path={[...path, 'sharePercent']} label={library.portionShare} unit="%" />
      )}
      {(has('grams') || !has('sharePercent')) && (
        <MeasureField path={[...path, 'grams']} label={library.portionGrams} dimension="mass" />
      )}
    </>
  );
}
