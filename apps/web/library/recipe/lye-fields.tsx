import type { ReactNode } from 'react';
import { acidNames } from '#contract/names';
import { CheckField, SelectField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { ListEditor } from '../../form/list-editor.js';
import { NumberField } from '../../form/number-field.js';
import { valueAt, withValue } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { LiquidsFields } from './liquids-fields.js';
import { waterIn, waterWay, waterWays, type WaterViews, type WaterWay } from './water-ways.js';

/** Superfat, water in one of three ways, and what else belongs to the lye. */
export function LyeFields({ views }: { readonly views: WaterViews | undefined }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const way = waterWay(content as never);
  const koh = valueAt(content, ['kohSharePercent']);
  const superfat = valueAt(content, ['superfatPercent']);
  const turn = (next: WaterWay): void => {
    const without = waterWays.reduce((before, each) => withValue(before, [each], undefined), content);
    change([], withValue(without, [next], waterIn(next, views)));
  };
  return (
    <section className="card stack">
      <h2>{library.lye}</h2>
      <div className="fields">
        <NumberField
          path={['superfatPercent']}
          label={library.superfat}
          hint={library.superfatHint}
          unit="%"
          preset={5}
        />
        <NumberField
          path={[way]}
          label={library.wayFields[way]}
          hint={library.waterHints[way]}
          unit={way === 'waterPerLye' ? ': 1' : '%'}
        />
      </div>
      {typeof superfat === 'number' && superfat < 0 && (
        <CheckField path={['lyeExcessIntended']} label={library.lyeExcess} />
      )}
      <fieldset>
        <legend>{library.waterBy}</legend>
        <div className="ways">
          {waterWays.map((each) => (
            <label key={each}>
              <input type="radio" name="water" checked={each === way} onChange={() => turn(each)} />
              {library.ways[each]}
            </label>
          ))}
        </div>
      </fieldset>
      <LiquidsFields />
      <details className="more">
        <summary>{library.moreLye}</summary>
        <div className="stack">
          <div className="fields">
            <NumberField path={['naohPurityPercent']} label={library.naohPurity} unit="%" preset={100} />
            <NumberField
              path={['lyeStockPercent']}
              label={library.lyeStock}
              hint={library.lyeStockHint}
              unit="%"
            />
            <NumberField path={['kohSharePercent']} label={library.kohShare} unit="%" preset={0} />
            {typeof koh === 'number' && koh > 0 && (
              <NumberField path={['kohPurityPercent']} label={library.kohPurity} unit="%" />
            )}
          </div>
          <ListEditor
            path={['acids']}
            title={library.acids}
            make={() => ({ acid: 'citric-acid', percent: 1 })}
            most={5}
          >
            {(path) => (
              <div className="fields">
                <SelectField
                  path={[...path, 'acid']}
                  label={library.acid}
                  choices={acidNames.map((value) => ({ value, text: library.acidNames[value] }))}
                />
                <NumberField path={[...path, 'percent']} label={library.ofFats} unit="%" />
                <NumberField path={[...path, 'strengthPercent']} label={library.strength} unit="%" />
                <CheckField path={[...path, 'replacesWater']} label={library.replacesWater} />
              </div>
            )}
          </ListEditor>
        </div>
      </details>
    </section>
  );
}
