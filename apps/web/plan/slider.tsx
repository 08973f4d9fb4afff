import { useId, type ReactNode } from 'react';

/** A slider with its value in words beside it; arrows move it by a step, page keys by more. */
export function Slider({
  label,
  value,
  text,
  low,
  high,
  step,
  ends,
  hint,
  onChange,
}: {
  readonly label: string;
  readonly value: number;
  /** The value as it is shown and read out. */
  readonly text: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** What lies at either end. */
  readonly ends?: readonly [low: string, high: string];
  readonly hint?: ReactNode;
  readonly onChange: (value: number) => void;
}): ReactNode {
  const id = useId();
  return (
    <div className="field slider">
      <div className="row apart">
        <label htmlFor={id}>{label}</label>
        <output htmlFor={id} className="numbers">
          {text}
        </output>
      </div>
      <input
        id={id}
        type="range"
        min={low}
        max={high}
        step={step}
        value={value}
        aria-valuetext={text}
        onChange={({ target }) => onChange(target.valueAsNumber)}
      />
      {ends !== undefined && (
        <div className="row apart soft small" aria-hidden>
          <span>{ends[0]}</span>
          <span>{ends[1]}</span>
        </div>
      )}
      {hint}
    </div>
  );
}
