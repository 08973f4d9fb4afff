import type { ReactNode } from 'react';
import { carrierKinds } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import { listAt, textAt, valueAt, type Path } from '../../form/values.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { newKey } from '../new-key.js';
import { useShippedFats } from '../shelf-calls.js';

/** The colours of a part, and what they are stirred into first. */
export function ColourFields({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const taken = listAt(content, path).map((each) => textAt(each, ['key']));
  return (
    <ListEditor
      path={path}
      title={library.colours}
      most={10}
      make={() => ({ key: newKey('colour', taken), percent: 1 })}
    >
      {(item) => <ColourItem path={item} />}
    </ListEditor>
  );
}

function ColourItem({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const { titled } = useTexts();
  const { data: fats = [] } = useShippedFats();
  const carrier = valueAt(content, [...path, 'carrier', 'kind']);
  return (
    <div className="fields">
      <TextField path={[...path, 'title']} label={library.colour} />
      <NumberField path={[...path, 'percent']} label={library.ofFats} unit="%" />
      <SelectField
        path={[...path, 'carrier', 'kind']}
        label={library.carrier}
        none={library.noCarrier}
        choices={carrierKinds.map((value) => ({ value, text: library.carriers[value] }))}
        onChosen={(kind) =>
          change([...path, 'carrier'], kind === undefined ? undefined : { kind, perGram: 2 })
        }
      />
      {carrier === 'fat' && (
        <SelectField
          path={[...path, 'carrier', 'fat']}
          label={library.fat}
          none="…"
          choices={fats.map(({ key, title }) => ({ value: key, text: titled(key, title) }))}
        />
      )}
      {carrier !== undefined && (
        <NumberField path={[...path, 'carrier', 'perGram']} label={library.perGram} unit=": 1" />
      )}
    </div>
  );
}
