import type { ReactNode } from 'react';
import './choice.css';

/** One of a few, all in sight. */
export function Choice<T extends string>({
  legend,
  name,
  value,
  options,
  onChoose,
}: {
  readonly legend: string;
  readonly name: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly text: string; readonly lang?: string }[];
  readonly onChoose: (value: T) => void;
}): ReactNode {
  return (
    <fieldset className="choice">
      <legend>{legend}</legend>
      {options.map((option) => (
        <label key={option.value} lang={option.lang}>
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            onChange={() => onChoose(option.value)}
          />
          <span>{option.text}</span>
        </label>
      ))}
    </fieldset>
  );
}
