import { useId, useState, type ReactNode } from 'react';
import type { LogEntry, PlannedStage } from '#contract';
import { serverNow } from '../api/server-time.js';
import { useTimeZone } from '../session/session.js';
import { Dialog } from '../shell/dialog.js';
import { useWords } from '../words/words.js';
import { instantOf, wallClock } from '../look/wall-clock.js';

type Done = Extract<LogEntry, { kind: 'done' }>;
type Wrong = 'noTime' | 'backwards' | 'future';

/** Asks when a stage was really begun and finished. */
export function DoneDialog({
  stage,
  onClose,
  onDone,
}: {
  readonly stage: PlannedStage;
  readonly onClose: () => void;
  readonly onDone: (entry: Done) => void;
}): ReactNode {
  const { now } = useWords();
  const zone = useTimeZone();
  const [opened] = useState(serverNow);
  const planned = Date.parse(stage.endAt) - Date.parse(stage.startAt);
  const [started, setStarted] = useState(() => wallClock(opened - planned, zone));
  const [finished, setFinished] = useState(() => wallClock(opened, zone));
  const [wrong, setWrong] = useState<Wrong>();
  const save = (): void => {
    const [from, to] = [instantOf(started, zone), instantOf(finished, zone)];
    const found = wrongWith(from, to, serverNow());
    setWrong(found);
    if (found !== undefined || from === undefined || to === undefined) return;
    const [startedAt, at] = [new Date(from).toISOString(), new Date(to).toISOString()];
    onDone({ kind: 'done', stage: stage.key, startedAt, at });
    onClose();
  };
  return (
    <Dialog title={now.times.title(stage.title)} onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <Field label={now.times.started} value={started} onChange={setStarted} />
        <Field label={now.times.finished} value={finished} onChange={setFinished} />
        <p role="alert" className="wrong">
          {wrong === undefined ? '' : now.times[wrong]}
        </p>
        <div className="actions">
          <button type="submit" className="button main">
            {now.times.save}
          </button>
          <button type="button" className="button" onClick={onClose}>
            {now.times.cancel}
          </button>
        </div>
      </form>
    </Dialog>
  );
}

function Field({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}): ReactNode {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="datetime-local"
        value={value}
        onChange={(event) => onChange(event.target.value)}
        required
      />
    </div>
  );
}

/** The API lets a clock be some minutes ahead; a minute is what rounding needs. */
function wrongWith(from: number | undefined, to: number | undefined, now: number): Wrong | undefined {
  if (from === undefined || to === undefined) return 'noTime';
  if (from > to) return 'backwards';
  return to > now + 60_000 ? 'future' : undefined;
}
