import { useState, type ReactNode } from 'react';
import { useWords } from '../words/words.js';
import { fieldId, useField } from './form-context.js';
import { NumberField } from './number-field.js';
import type { Path } from './values.js';

const MIN_PER = { min: 1, h: 60, d: 1440 } as const;
type Per = keyof typeof MIN_PER;

/** A length of time that is kept in minutes and told in minutes, hours or days. */
export function LengthField({ path, label }: { readonly path: Path; readonly label: string }): ReactNode {
  const { form } = useWords();
  const { value, set } = useField(path);
  // Kept while it is typed: 24 h must not turn into a day as it is typed.
  const [per, setPer] = useState<Per>(() => usual(value));
  return (
    <div className="length">
      <NumberField
        path={path}
        label={label}
        as={{
          shown: (minutes) => minutes / MIN_PER[per],
          meant: (typed) => Math.round(typed * MIN_PER[per]),
        }}
      />
      <select
        aria-label={`${label}: ${form.unit}`}
        id={`${fieldId(path)}-unit`}
        value={per}
        onChange={({ target }) => {
          const next = target.value as Per;
          // The figure stays, what it means changes: the maker corrects the unit, not the number.
          if (typeof value === 'number') set(Math.round((value / MIN_PER[per]) * MIN_PER[next]));
          setPer(next);
        }}
      >
        {(['min', 'h', 'd'] as const).map((each) => (
          <option key={each} value={each}>
            {form.lengthUnits[each]}
          </option>
        ))}
      </select>
    </div>
  );
}

/** The largest unit in which it is a round figure. */
function usual(value: unknown): Per {
  if (typeof value !== 'number' || value === 0) return 'h';
  return value % 1440 === 0 ? 'd' : value % 60 === 0 ? 'h' : 'min';
}
