import type { ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { useAmounts } from '../look/amounts.js';
import { Choice } from '../form/choice.js';
import { usePreference } from '../preferences/preferences.js';

/** The units in which amounts are shown and typed. */
export function UnitsChoice(): ReactNode {
  const settings = useSettingsWords();
  const [units, setUnits] = usePreference('units');
  const { mass, volume, temperature } = useAmounts();
  return (
    <div className="stack tight">
      <Choice
        legend={settings.units}
        name="units"
        value={units}
        options={[
          { value: 'metric', text: settings.metric },
          { value: 'us', text: settings.us },
        ]}
        onChoose={setUnits}
      />
      <p className="soft small numbers">{settings.unitsExample(mass(1250), volume(84), temperature(29))}</p>
    </div>
  );
}
