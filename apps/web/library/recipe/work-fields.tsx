import type { ReactNode } from 'react';
import { gels, mixings } from '#contract/names';
import { SelectField } from '../../form/fields.js';
import { MeasureField } from '../../form/number-field.js';
import { useWords } from '../../words/words.js';

/** How the batter is worked, for the forecasts. */
export function WorkFields(): ReactNode {
  const { library } = useWords();
  return (
    <section className="card stack">
      <h2>{library.work}</h2>
      <div className="fields">
        <MeasureField
          path={['batterTemperatureC']}
          label={library.temperature}
          dimension="temperature"
          preset={38}
        />
        <SelectField
          path={['mixing']}
          label={library.mixing}
          preset="blender"
          choices={mixings.map((value) => ({ value, text: library.mixings[value] }))}
        />
        <SelectField
          path={['gel']}
          label={library.gel}
          preset="auto"
          choices={gels.map((value) => ({ value, text: library.gels[value] }))}
        />
      </div>
    </section>
  );
}
