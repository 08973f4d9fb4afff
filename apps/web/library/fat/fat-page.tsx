import type { ReactNode } from 'react';
import { useSearchParams } from 'react-router';
import { fatKinds } from '#contract/names';
import { CheckField, SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { NumberField } from '../../form/number-field.js';
import { valueAt, withValue } from '../../form/values.js';
import { Loading } from '../../shell/states.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { useShippedFats } from '../shelf-calls.js';
import { ThingEditor } from '../thing-editor.js';
import { ThingPage } from '../thing-page.js';
import { AcidProfile } from './acid-profile.js';
import { ownFrom } from './own-from.js';

/** A fat of the maker's own, by the certificate of a lot. */
export default function FatPage(): ReactNode {
  const { library } = useWords();
  const { titled, behaviourOf, temperature } = useTexts();
  const [search] = useSearchParams();
  const { data: shipped } = useShippedFats();
  const like = search.get('as');
  if (like !== null && shipped === undefined) return <Loading />;
  const model = shipped?.find(({ key }) => key === like);
  return (
    <ThingPage
      kind="fats"
      blank={
        model === undefined
          ? { fattyAcidsPercent: {} }
          : ownFrom(
              model,
              library.ofMine(titled(model.key, model.title)),
              behaviourOf(model.key, model.behaviour),
            )
      }
    >
      {({ thing, ...opened }) => (
        <ThingEditor key={thing?.id ?? 'new'} kind="fats" thing={thing} {...opened}>
          {() => (
            <>
              <p className="note">{library.certificateHow}</p>
              <section className="card stack">
                <TextField path={['title']} label={library.name} />
                <Saponification />
                <TextField path={['source']} label={library.source} hint={library.sourceHint} keep />
              </section>
              <AcidProfile />
              <section className="card stack">
                <h2>{library.otherFigures}</h2>
                <div className="fields">
                  <NumberField
                    path={['densityGPerMl']}
                    label={library.density(temperature(20))}
                    hint={library.densityHint}
                    unit="g/mL"
                  />
                  <NumberField
                    path={['expansionGPerMlPerC']}
                    label={library.expansion}
                    unit="g/mL/°C"
                    preset={0.00064}
                  />
                  <RangeFields field="iodine" label={`${library.iodine}, g/100 g`} />
                  <RangeFields field="unsaponifiablePercent" label={`${library.unsaponifiable}, %`} />
                  <SelectField
                    path={['kind']}
                    label={library.fatKind}
                    preset="triglyceride"
                    choices={fatKinds.map((value) => ({ value, text: library.fatKinds[value] }))}
                  />
                  <TextField path={['inci']} label={library.inci} isName />
                  <TextField path={['soapInci']} label={library.soapInci} isName />
                </div>
                <TextField path={['behaviour']} label={library.fatBehaviour} />
                <CheckField path={['ofThisLot']} label={library.ofThisLot} hint={library.ofThisLotHint} />
                <CheckField path={['confirmed']} label={library.confirmed} hint={library.confirmedHint} />
              </section>
            </>
          )}
        </ThingEditor>
      )}
    </ThingPage>
  );
}

/** One figure as a certificate gives it, or the ends of a range around it. */
function Saponification(): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const field = 'saponificationMgKohPerG';
  const value = valueAt(content, [field]);
  const isRange = value !== null && typeof value === 'object';
  // What the API gives back for one figure is the same figure three times.
  const used = valueAt(content, [field, 'used']);
  const isOne =
    !isRange || (used === valueAt(content, [field, 'low']) && used === valueAt(content, [field, 'high']));
  return (
    <fieldset className="stack tight">
      <legend>{library.saponification}</legend>
      <div className="ways">
        <label>
          <input
            type="radio"
            name="sap"
            checked={isOne}
            onChange={() => change([], withValue(content, [field], isRange ? used : value))}
          />
          {library.sapOne}
        </label>
        <label>
          <input
            type="radio"
            name="sap"
            checked={!isOne}
            onChange={() => change([field], { used: isRange ? used : value })}
          />
          {library.sapRange}
        </label>
      </div>
      <div className="fields">
        {isOne ? (
          <NumberField
            path={isRange ? [field, 'used'] : [field]}
            label={library.sapValue}
            unit="mg/g"
            hint={library.sapHint}
            onSet={(next) => change([field], next)}
          />
        ) : (
          (['low', 'used', 'high'] as const).map((end) => (
            <NumberField key={end} path={[field, end]} label={library.ends[end]} unit="mg/g" />
          ))
        )}
      </div>
    </fieldset>
  );
}

function RangeFields({ field, label }: { readonly field: string; readonly label: string }): ReactNode {
  const { library } = useWords();
  return (
    <fieldset className="stack tight">
      <legend>{label}</legend>
      <div className="two">
        <NumberField path={[field, 'low']} label={library.ends.low} />
        <NumberField path={[field, 'high']} label={library.ends.high} />
      </div>
    </fieldset>
  );
}
