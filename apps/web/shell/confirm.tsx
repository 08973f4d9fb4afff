import { useEffect, useRef, useState, type ReactNode } from 'react';
import './confirm.css';

/** A button for what cannot be undone by another tap: it asks first, in its own place. */
export function Confirm({
  label,
  name,
  ask,
  yes,
  no,
  busy = false,
  className = 'button warn',
  onYes,
}: {
  /** What stands on the button. */
  readonly label: ReactNode;
  /** What it is called where the label alone does not tell it from others. */
  readonly name?: string;
  readonly ask: string;
  readonly yes: string;
  readonly no: string;
  readonly busy?: boolean;
  readonly className?: string;
  readonly onYes: () => void;
}): ReactNode {
  const [asks, setAsks] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const back = useRef<HTMLButtonElement>(null);
  const wasAsking = useRef(false);
  useEffect(() => {
    // What was tapped is gone, so the focus would be nowhere.
    if (asks) back.current?.focus();
    else if (wasAsking.current) opener.current?.focus();
    wasAsking.current = asks;
  }, [asks]);
  if (!asks) {
    return (
      <button
        ref={opener}
        type="button"
        className={className}
        aria-label={name}
        disabled={busy}
        onClick={() => setAsks(true)}
      >
        {label}
      </button>
    );
  }
  return (
    <div
      role="group"
      aria-label={ask}
      className="confirm note coral stack tight"
      onKeyDown={({ key }) => {
        if (key === 'Escape') setAsks(false);
      }}
    >
      <p>{ask}</p>
      <div className="row">
        <button
          type="button"
          className="button warn"
          onClick={() => {
            setAsks(false);
            onYes();
          }}
        >
          {yes}
        </button>
        <button ref={back} type="button" className="button" onClick={() => setAsks(false)}>
          {no}
        </button>
      </div>
    </div>
  );
}
