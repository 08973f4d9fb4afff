import type { ReactNode } from 'react';
import { liquidAcidNames, liquidPlaces } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { fieldId, useField, useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { listAt, valueAt, withValue, type Path, type Value } from '../../form/values.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { newKey } from '../new-key.js';
import { useShippedLiquids } from '../shelf-calls.js';
import { sortOf } from './amount-sorts.js';
import { turnedTo } from './liquid-lines.js';
import type { Share } from './shares.js';

/** What is chosen for a liquid that is not in the table. */
const OTHER = 'own-figures';

/** Liquids in place of water: which, how much, and where each goes in. */
export function LiquidsFields(): ReactNode {
  const { library } = useWords();
  // What all of them together do to the lye is about no single field.
  const { wrong, id } = useField(['liquids']);
  return (
    <>
      <ListEditor
        path={['liquids']}
        title={library.liquids}
        add={library.addLiquid}
        most={6}
        make={() => ({ addedTo: 'lye', percentOfLiquid: 50 })}
      >
        {(path) => <LiquidLine path={path} />}
      </ListEditor>
      {wrong.length > 0 && (
        <p id={`${id}-wrong`} className="wrong" role="status">
          {wrong.join(' ')}
        </p>
      )}
    </>
  );
}

function LiquidLine({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const { titled, language } = useTexts();
  const shipped = useShippedLiquids().data ?? [];
  const choices = shipped
    .map(({ key, title }) => ({ value: key, text: titled(key, title) }))
    .sort((a, b) => a.text.localeCompare(b.text, language));
  const line = valueAt(content, path);
  const isOwn = valueAt(line, ['own']) !== undefined;
  const inGrams = valueAt(line, ['grams']) !== undefined;
  const fatsInGrams = sortOf(listAt(content, ['fats']) as unknown as readonly Share[]) === 'grams';
  const set = (next: Value): void => change([], withValue(content, path, next));
  const taken = listAt(content, ['liquids']).flatMap((each) => {
    const key = valueAt(each, ['liquid']);
    return typeof key === 'string' ? [key] : [];
  });
  return (
    <div className="fields">
      {isOwn ? (
        <TextField path={[...path, 'own', 'title']} label={library.liquid} />
      ) : (
        <SelectField
          path={[...path, 'liquid']}
          label={library.liquid}
          choices={[...choices, { value: OTHER, text: library.ownLiquid }]}
          onChosen={(chosen) => {
            if (chosen !== OTHER) change([...path, 'liquid'], chosen);
            else set({ ...(line as object), liquid: newKey('own-liquid', taken), own: {} });
          }}
        />
      )}
      {(fatsInGrams || inGrams) && (
        <div className="field">
          <label htmlFor={`${fieldId(path)}-sort`}>{library.liquidIn}</label>
          <select
            id={`${fieldId(path)}-sort`}
            value={inGrams ? 'grams' : 'percent'}
            onChange={({ target }) => set(turnedTo(line, target.value === 'grams' ? 'grams' : 'percent'))}
          >
            <option value="percent">{library.liquidSorts.percent}</option>
            <option value="grams">{library.liquidSorts.grams}</option>
          </select>
        </div>
      )}
      {inGrams ? (
        <MeasureField path={[...path, 'grams']} label={library.liquidWeight} keep dimension="mass" />
      ) : (
        <NumberField path={[...path, 'percentOfLiquid']} label={library.ofLiquid} unit="%" />
      )}
      <SelectField
        path={[...path, 'addedTo']}
        label={library.goesInto}
        preset="lye"
        choices={liquidPlaces.map((value) => ({ value, text: library.liquidPlaces[value] }))}
      />
      {isOwn && <OwnFigures path={[...path, 'own']} />}
    </div>
  );
}

/** What a label tells of 100 g. */
function OwnFigures({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const acid = valueAt(content, [...path, 'acid', 'acid']);
  return (
    <>
      <NumberField path={[...path, 'fatPercent']} label={library.holdsFat} unit="%" preset={0} />
      <NumberField path={[...path, 'sugarPercent']} label={library.sugar} unit="%" preset={0} />
      <NumberField
        path={[...path, 'proteinPercent']}
        label={library.holdsRest}
        unit="%"
        preset={0}
        hint={library.holdsRestHint}
      />
      <NumberField path={[...path, 'saltPercent']} label={library.salt} unit="%" preset={0} />
      <NumberField
        path={[...path, 'alcoholPercent']}
        label={library.holdsAlcohol}
        unit="%"
        preset={0}
        hint={library.holdsAlcoholHint}
      />
      <SelectField
        path={[...path, 'acid', 'acid']}
        label={library.acid}
        none={library.noAcid}
        choices={liquidAcidNames.map((value) => ({ value, text: library.liquidAcids[value] }))}
        onChosen={(chosen) => {
          if (chosen === undefined) change([...path, 'acid'], undefined);
          else change([...path, 'acid', 'acid'], chosen);
        }}
      />
      {acid !== undefined && (
        <NumberField path={[...path, 'acid', 'percent']} label={library.holdsAcid} unit="%" />
      )}
    </>
  );
}
