import type { ReactNode } from 'react';
import { mouldKinds } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { useField, useForm } from '../../form/form-context.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { valueAt, withValue, type Value } from '../../form/values.js';
import { useAmounts } from '../../look/amounts.js';
import { useWords } from '../../words/words.js';
import { ThingEditor } from '../thing-editor.js';
import { useCapacity } from '../thing-line.js';
import { ThingPage } from '../thing-page.js';
import { forms, measuresOf, mouldWay, mouldWays, type MouldWay } from './mould-ways.js';
import { ShapePicture } from './shape-picture.js';

const blank = { kind: 'silicone-cavity', waterC: 20, waterFillG: undefined };

/** One mould: how many cavities of what size, told in one of three ways. */
export default function MouldPage(): ReactNode {
  const { library } = useWords();
  return (
    <ThingPage kind="moulds" blank={blank}>
      {({ thing, ...opened }) => (
        <ThingEditor key={thing?.id ?? 'new'} kind="moulds" thing={thing} {...opened}>
          {() => (
            <div className="beside">
              <section className="card stack">
                <TextField path={['title']} label={library.name} />
                <div className="fields">
                  <SelectField
                    path={['kind']}
                    label={library.mouldKind}
                    choices={mouldKinds.map((value) => ({ value, text: library.mouldKinds[value] }))}
                  />
                  <NumberField path={['cavities']} label={library.cavitiesOwned} />
                </div>
                <CavityFields />
              </section>
              <Capacity />
            </div>
          )}
        </ThingEditor>
      )}
    </ThingPage>
  );
}

/** The cavity by volume, by the water that fills it, or by its inner measures. */
function CavityFields(): ReactNode {
  const { library } = useWords();
  const { length } = useAmounts();
  const { content, change } = useForm();
  const way = mouldWay(content);
  const form = valueAt(content, ['shape', 'form']);
  const turn = (next: MouldWay): void => {
    // Measures stay where they are only a volume's neighbours.
    const others = next === 'shape' || way === 'shape' ? ['shape'] : [];
    const bare = ['cavityMl', 'waterFillG', 'waterC', ...others].reduce<Value>(
      (before, each) => withValue(before, [each], undefined),
      content,
    );
    const start: Value = next === 'shape' ? { form: 'box' } : undefined;
    change(
      [],
      next === 'waterFillG' ? withValue(bare, ['waterC'], 20) : withValue(bare, [next], start ?? null),
    );
  };
  return (
    <>
      <fieldset>
        <legend>{library.cavityBy}</legend>
        <div className="ways">
          {mouldWays.map((each) => (
            <label key={each}>
              <input type="radio" name="way" checked={each === way} onChange={() => turn(each)} />
              {library.mouldWays[each]}
            </label>
          ))}
        </div>
      </fieldset>
      {way === 'cavityMl' && (
        <div className="fields">
          <MeasureField path={['cavityMl']} label={library.oneCavity} dimension="volume" />
        </div>
      )}
      {way === 'waterFillG' && (
        <>
          <p className="soft small">{library.waterHow}</p>
          <div className="fields">
            <MeasureField path={['waterFillG']} label={library.waterFill} dimension="mass" />
            <MeasureField
              path={['waterC']}
              label={library.waterTemperature}
              dimension="temperature"
              preset={20}
            />
          </div>
        </>
      )}
      {way === 'shape' && <ShapeFields />}
      <details className="more" open={way !== 'shape' && form !== undefined}>
        <summary>{library.forHeat}</summary>
        <div className="stack">
          <p className="soft small">{library.forHeatHint}</p>
          {way !== 'shape' && <ShapeFields isOptional />}
          <div className="fields">
            <MeasureField
              path={['wallMm']}
              label={library.wall}
              hint={library.wallHint(length(2.5), length(15), length(4), length(1.5))}
              dimension="length"
            />
          </div>
        </div>
      </details>
    </>
  );
}

/** The form of a cavity and its inner measures. @param isOptional they stand beside a volume, and may be left out */
function ShapeFields({ isOptional = false }: { readonly isOptional?: boolean }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const form = valueAt(content, ['shape', 'form']);
  // What is wrong with the measures together.
  const { id, wrong, described } = useField(['shape']);
  return (
    <>
      <div
        id={id}
        tabIndex={-1}
        className="fields"
        role="group"
        aria-label={library.shape}
        aria-describedby={described['aria-describedby']}
      >
        <SelectField
          path={['shape', 'form']}
          label={library.shape}
          {...(isOptional && { none: library.noShape })}
          choices={forms.map((value) => ({ value, text: library.forms[value] }))}
          onChosen={(next) =>
            change(['shape'], next === undefined && isOptional ? undefined : { form: next ?? 'box' })
          }
        />
        {measuresOf(form).map((measure) => (
          <MeasureField
            key={measure}
            path={['shape', measure]}
            label={library.measures[measure]}
            dimension="length"
          />
        ))}
      </div>
      {wrong.length > 0 && (
        <p id={`${id}-wrong`} className="wrong">
          {wrong.join(' ')}
        </p>
      )}
      {form !== undefined && <ShapePicture form={form} />}
    </>
  );
}

/** What it holds, as far as it is described. */
function Capacity(): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const { volume } = useAmounts();
  const each = useCapacity(content as object);
  const cavities = valueAt(content, ['cavities']);
  return (
    <section className="card stack tight" aria-live="polite">
      <h2>{library.holds}</h2>
      {each === undefined ? (
        <p className="soft">{library.holdsNot}</p>
      ) : (
        <>
          <p className="big-figure numbers">{volume(each)}</p>
          {typeof cavities === 'number' && cavities > 1 && (
            <p>{library.holdsAll(cavities, volume(each * cavities))}</p>
          )}
        </>
      )}
    </section>
  );
}
