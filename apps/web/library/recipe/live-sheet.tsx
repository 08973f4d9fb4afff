import type { ReactNode } from 'react';
import type { Mould } from '#contract';
import { SelectField } from '../../form/fields.js';
import { FormContext } from '../../form/form-context.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { withValue, type Value } from '../../form/values.js';
import { Failed } from '../../shell/states.js';
import { useWords } from '../../words/words.js';
import { AmountsList } from './amounts-list.js';
import { FillCheck } from './fill-check.js';
import type { Purpose } from './preview-file.js';
import { Risks } from './risks.js';
import { isUnready, type Preview } from './use-preview.js';
import { allOf, USUAL_ML } from './use-purpose.js';

/** What the recipe comes to for a batch, as it is being written. */
export function LiveSheet({
  preview,
  purpose,
  onPurpose,
  moulds,
}: {
  readonly preview: Preview;
  readonly purpose: Purpose;
  readonly onPurpose: (purpose: Purpose) => void;
  readonly moulds: readonly Mould[];
}): ReactNode {
  const { library } = useWords();
  const { amounts, batch, clocks, isBegun, isOld, error } = preview;
  return (
    <section className="card stack live" aria-labelledby="live">
      <h2 id="live">{library.amounts}</h2>
      <PurposeFields purpose={purpose} onPurpose={onPurpose} moulds={moulds} />
      {isOld && error !== null && !isUnready(error) && <Failed error={error} />}
      {isOld && isUnready(error) && (
        <p className="note amber" role="status">
          {amounts === undefined ? library.waits : library.older}
        </p>
      )}
      {!isBegun && <p className="soft">{library.waitsFats}</p>}
      {amounts !== undefined && (
        <div className={isOld ? 'stack old' : 'stack'}>
          <AmountsList amounts={amounts} cautions={batch?.cautions ?? []} />
          {clocks?.filling && <FillCheck filling={clocks.filling} count={amounts.count} />}
          <Risks risks={[...(batch?.risks ?? []), ...amounts.risks]} />
        </div>
      )}
    </section>
  );
}

/** The mould, how much of it, and how fast it is filled. */
function PurposeFields({
  purpose,
  onPurpose,
  moulds,
}: {
  readonly purpose: Purpose;
  readonly onPurpose: (purpose: Purpose) => void;
  readonly moulds: readonly Mould[];
}): ReactNode {
  const { library } = useWords();
  const choose = (key: string | undefined): void => {
    const mould = moulds.find((each) => each.key === key);
    onPurpose(mould === undefined ? { by: 'volume', ml: USUAL_ML } : allOf(mould));
  };
  const content = purpose as unknown as Value;
  return (
    <FormContext
      value={{
        content,
        change: (path, value) => onPurpose(withValue(content, path, value) as unknown as Purpose),
        issues: [],
      }}
    >
      {/* Enter in these is not meant to save the recipe. */}
      <div className="fields" onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}>
        <SelectField
          path={['mould']}
          label={library.batchFor}
          none={library.aVolume}
          choices={moulds.map(({ key, title }) => ({ value: key, text: title }))}
          onChosen={choose}
        />
        {purpose.by === 'mould' ? (
          <>
            <NumberField path={['cavities']} label={library.cavities} />
            <NumberField path={['perCavityS']} label={library.perCavity} unit="s" />
          </>
        ) : (
          <MeasureField path={['ml']} label={library.volume} dimension="volume" />
        )}
      </div>
      {moulds.length === 0 && <p className="soft small">{library.noMould}</p>}
    </FormContext>
  );
}
