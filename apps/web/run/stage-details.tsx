import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import { StageDots } from '../dots/stage-dots.js';
import type { Stretch } from '../look/local-days.js';
import { useTimes } from '../look/times.js';
import { useStageWords } from '../tide/stage-words.js';
import type { TideMark } from '../tide/tide-run.js';
import { rowId } from '../tide/tide-table.js';
import { useWords } from '../words/words.js';
import { Sentence, Sentences } from '../look/sentence.js';

/** All that is told of one stage. */
export function StageDetails({
  mark,
  hours,
  zone,
  onMove,
  onClose,
}: {
  readonly mark: TideMark;
  readonly hours: readonly Stretch[];
  readonly zone: string;
  /** Absent: it cannot be moved. */
  readonly onMove: (() => void) | undefined;
  readonly onClose: () => void;
}): ReactNode {
  const { tide: words } = useWords();
  const { dayTime } = useTimes();
  const told = useStageWords();
  const { stage, number, id, lost } = mark;
  const planned = stage.status === 'planned';
  return (
    <div className="card stack tight stage-details" role="group" aria-label={stage.title} aria-live="polite">
      <div className="row apart">
        <h3>
          {number}. {stage.title}
        </h3>
        <button type="button" className="button plain" aria-label={words.close} onClick={onClose}>
          <X size={20} aria-hidden />
        </button>
      </div>
      {planned ? (
        <dl className="run-facts">
          <Fact name={words.opens} value={dayTime(stage.opensAt)} />
          <Fact name={words.best} value={dayTime(stage.bestAt)} />
          <Fact name={words.lastCall} value={told.lastCall(stage)} />
          <Fact name={words.surely} value={told.surely(stage)} />
        </dl>
      ) : (
        <p>{told.label(mark)}</p>
      )}
      {planned &&
        told.risk(lost).map((risk) => (
          <p key={risk}>
            <strong>{risk}</strong>
          </p>
        ))}
      {planned && <StageDots {...{ stage, hours, zone }} />}
      <p className="small">
        <Sentences of={stage.why} />
      </p>
      {stage.cautions.map((caution) => (
        <p key={caution.code} className="note amber small">
          <Sentence of={caution} />
        </p>
      ))}
      <div className="row">
        {onMove !== undefined && (
          <button type="button" className="button" onClick={onMove}>
            {words.move}
          </button>
        )}
        <a className="button plain" href={`#${rowId(id)}`}>
          {words.inTable}
        </a>
      </div>
    </div>
  );
}

function Fact({ name, value }: { readonly name: string; readonly value: string }): ReactNode {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="numbers">{value}</dd>
    </div>
  );
}
