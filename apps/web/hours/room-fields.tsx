import type { ReactNode } from 'react';
import { airMovements } from '#contract/names';
import { SelectField, TextField } from '../form/fields.js';
import { fieldId, useForm } from '../form/form-context.js';
import { MeasureField, NumberField } from '../form/number-field.js';
import { textAt, valueAt } from '../form/values.js';
import { useWords } from '../words/words.js';
import { TimeInput } from './spans-editor.js';

const QUIET = ['hours', 'quiet'];

/** When no nudge may come. */
export function QuietFields(): ReactNode {
  const { hours } = useWords();
  const { content, change } = useForm();
  const isOn = valueAt(content, QUIET) !== undefined;
  return (
    <section className="card stack" aria-labelledby="quiet">
      <div className="stack tight">
        <h2 id="quiet">{hours.quiet}</h2>
        <p className="soft small">{hours.quietHint}</p>
      </div>
      <div className="field check">
        <label htmlFor="quiet-on">
          <input
            id="quiet-on"
            type="checkbox"
            checked={isOn}
            onChange={({ target }) =>
              change(QUIET, target.checked ? { from: '22:00', to: '07:00' } : undefined)
            }
          />
          <span>{hours.quietOn}</span>
        </label>
      </div>
      {isOn && (
        <div className="row">
          {(['from', 'to'] as const).map((edge) => (
            <div key={edge} className="field">
              <label htmlFor={fieldId([...QUIET, edge])}>{hours[edge]}</label>
              <TimeInput
                id={fieldId([...QUIET, edge])}
                label={`${hours.quiet}: ${hours[edge]}`}
                value={textAt(content, [...QUIET, edge])}
                onValue={(value) => change([...QUIET, edge], value)}
              />
            </div>
          ))}
        </div>
      )}
    </section>
  );
}

/** What of the room the forecasts depend on, and whose time is meant. */
export function RoomFields(): ReactNode {
  const { hours } = useWords();
  return (
    <section className="card stack" aria-labelledby="room">
      <div className="stack tight">
        <h2 id="room">{hours.room}</h2>
        <p className="soft small">{hours.roomHint}</p>
      </div>
      <div className="fields">
        <MeasureField
          path={['room', 'temperatureC']}
          label={hours.temperature}
          dimension="temperature"
          preset={20}
        />
        <NumberField path={['room', 'humidityPercent']} label={hours.humidity} unit="%" preset={50} />
        <SelectField
          path={['room', 'air']}
          label={hours.air}
          preset="usual"
          choices={airMovements.map((value) => ({ value, text: hours.airs[value] }))}
        />
        <TextField path={['timeZone']} label={hours.timeZone} list="time-zones" isName />
      </div>
      <datalist id="time-zones">
        {Intl.supportedValuesOf('timeZone').map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
    </section>
  );
}
