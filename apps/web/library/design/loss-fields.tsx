import type { ReactNode } from 'react';
import { useForm } from '../../form/form-context.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { valueAt, withValue, type Path, type Value } from '../../form/values.js';
import { useWords } from '../../words/words.js';

const ways = ['usual', 'lossG', 'losses'] as const;
type Way = (typeof ways)[number];

/** What never reaches the pieces: as is usual, in one figure, or by the place where it stays. */
export function LossFields({ path }: { readonly path: Path }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const way = ways.find((each) => valueAt(content, [...path, each]) !== undefined) ?? 'usual';
  const turn = (next: Way): void => {
    const bare = ['lossG', 'losses'].reduce<Value>(
      (before, field) => withValue(before, [...path, field], undefined),
      content,
    );
    change([], next === 'usual' ? bare : withValue(bare, [...path, next], next === 'losses' ? {} : 20));
  };
  return (
    <fieldset className="stack tight">
      <legend>{library.losses}</legend>
      <div className="ways">
        {ways.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name={`loss-${path.join('-')}`}
              checked={each === way}
              onChange={() => turn(each)}
            />
            {library.lossWays[each]}
          </label>
        ))}
      </div>
      {way === 'lossG' && (
        <div className="fields">
          <MeasureField path={[...path, 'lossG']} label={library.lossAll} dimension="mass" />
        </div>
      )}
      {way === 'losses' && (
        <div className="fields">
          {(['bowlG', 'bagG', 'pipetteG'] as const).map((place) => (
            <MeasureField
              key={place}
              path={[...path, 'losses', place]}
              label={library.lossPlaces[place]}
              dimension="mass"
            />
          ))}
          <NumberField
            path={[...path, 'losses', 'trimmingPercent']}
            label={library.trimming}
            unit="%"
            preset={0}
          />
        </div>
      )}
    </fieldset>
  );
}
