import { useState, type ReactNode } from 'react';
import { fromBase, toBase, type UnitSystem } from '#units';
import { useAmounts, type FieldUnit, type Measured } from '../look/amounts.js';
import { useLanguage } from '../words/words.js';
import { FieldFrame } from './fields.js';
import { useField } from './form-context.js';
import { readNumber, writeNumber } from './numbers.js';
import type { Path, Value } from './values.js';

interface Props {
  readonly path: Path;
  readonly label: string;
  readonly hidden?: boolean;
  readonly hint?: ReactNode;
  /** Stands behind the number. */
  readonly unit?: string;
  /** What counts while nothing is filled in. */
  readonly preset?: number;
  /** An empty field stays, empty, instead of going: it is one of those that the person has asked for. */
  readonly keep?: boolean;
  /** Instead of putting the number at the path. */
  readonly onSet?: (value: Value) => void;
}

const asItIs: Omit<FieldUnit, 'sign'> = { shown: (value) => value, meant: (value) => value };

/** A number. What cannot be read as one stays as it was typed, and is told. */
export function NumberField({
  path,
  unit,
  preset,
  as = asItIs,
  keep = false,
  onSet,
  ...frame
}: Props & {
  /** The way from the number of the form to that in the field, and back. */
  readonly as?: Omit<FieldUnit, 'sign'>;
}): ReactNode {
  const { value, set: put, id, wrong, described } = useField(path);
  const set = onSet ?? put;
  const language = useLanguage();
  // While it is being typed the text is the person's own: “2.” must not turn into “2”.
  const [typed, setTyped] = useState<string | null>(null);
  const written = (amount: number): string => writeNumber(as.shown(amount), language);
  const stored = typeof value === 'number' ? written(value) : typeof value === 'string' ? value : '';
  return (
    <FieldFrame {...frame} id={id} wrong={wrong}>
      <span className="with-unit numbers">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={typed ?? stored}
          placeholder={preset === undefined ? undefined : written(preset)}
          onChange={({ target }) => {
            setTyped(target.value);
            const number = readNumber(target.value, language);
            if (target.value.trim() === '') set(keep ? '' : undefined);
            else set(number === undefined ? target.value : as.meant(number));
          }}
          onBlur={() => setTyped(null)}
          {...described}
        />
        {unit !== undefined && <span className="soft">{unit}</span>}
      </span>
    </FieldFrame>
  );
}

/** A mass, volume, length, area or temperature, in the units the person asked for. */
export function MeasureField({
  dimension,
  ...props
}: Omit<Props, 'unit'> & {
  /** `area`: of a surface, in cm²; `section`: of a line, in mm². */
  readonly dimension: Measured | 'area' | 'section';
}): ReactNode {
  const { field, system } = useAmounts();
  const as =
    dimension === 'area'
      ? areaIn(system === 'us' ? 'in²' : 'cm²')
      : dimension === 'section'
        ? sectionIn(system)
        : field[dimension];
  return <NumberField {...props} unit={as.sign} as={as} />;
}

function areaIn(unit: 'in²' | 'cm²'): FieldUnit {
  return {
    sign: unit,
    shown: (value) => Number(fromBase(value, unit).toFixed(2)),
    meant: (typed) => Number(toBase(typed, unit).toFixed(6)),
  };
}

function sectionIn(system: UnitSystem): FieldUnit {
  if (system === 'metric') return { sign: 'mm²', ...asItIs };
  const inches = areaIn('in²');
  return {
    sign: 'in²',
    // Of lines as thick as a pencil, hundredths of a square inch would be too rough.
    shown: (value) => Number(fromBase(value / 100, 'in²').toFixed(4)),
    meant: (typed) => Number((inches.meant(typed) * 100).toFixed(4)),
  };
}
