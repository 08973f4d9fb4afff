import { useId, useState, type ReactNode } from 'react';
import type { LogEntry, MishapKind, MishapResponse, RunPlan } from '#contract';
import { mishapKinds, mishapResponses, usualResponse } from '#contract/names';
import { makesPart } from '#runs';
import { groupsToChoose, mostAffected } from '../look/affected-groups.js';
import { AloneChoice, spoilsOthers } from '../run/alone-choice.js';
import { Dialog } from '../shell/dialog.js';
import { useWords } from '../words/words.js';
import { instantNow } from './use-logging.js';

type Mishap = Extract<LogEntry, { kind: 'mishap' }>;

/** Asks what went wrong with which part, and what to do about it. */
export function MishapDialog({
  plan,
  part: likely,
  onClose,
  onMishap,
}: {
  readonly plan: RunPlan;
  /** Of the stage at hand. */
  readonly part: string;
  readonly onClose: () => void;
  readonly onMishap: (entry: Mishap) => void;
}): ReactNode {
  const { now } = useWords();
  const words = now.mishap;
  const [at] = useState(instantNow);
  const parts = partsOf(plan);
  const [part, setPart] = useState(
    parts.some(({ key }) => key === likely) ? likely : (parts[0]?.key ?? likely),
  );
  const [mishap, setMishap] = useState<MishapKind>('seized');
  const [chosen, setChosen] = useState<MishapResponse>();
  const [group, setGroup] = useState<string>();
  const [pieces, setPieces] = useState('');
  const [isAlone, setIsAlone] = useState(false);
  const [note, setNote] = useState('');
  const [isWrong, setIsWrong] = useState(false);
  const response = chosen ?? usualResponse[mishap];
  const takesOthers = response === 'remake' && spoilsOthers(plan, part, mishap);
  const id = useId();
  const groups = response === 'drop-part' ? [] : groupsToChoose(plan, part);
  const of = groups.find(({ key }) => key === group)?.key;
  const most = mostAffected(plan, part, of);
  const save = (): void => {
    const count = pieces.trim() === '' ? undefined : Number(pieces);
    const fits = count === undefined || (Number.isInteger(count) && count >= 1 && count <= most);
    setIsWrong(!fits);
    if (!fits) return;
    const said = {
      ...(of && { group: of }),
      ...(count && { pieces: count }),
      ...(takesOthers && isAlone && { alone: true as const }),
      ...(note.trim() !== '' && { note: note.trim() }),
    };
    onMishap({ kind: 'mishap', part, mishap, response, at, ...said });
    onClose();
  };
  return (
    <Dialog title={words.title} onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <Choice
          legend={words.part}
          options={parts.map(({ key, title }) => ({ key, text: title }))}
          chosen={part}
          onChoose={setPart}
        />
        <Choice
          legend={words.kind}
          options={mishapKinds.map((key) => ({ key, text: words.kinds[key] }))}
          chosen={mishap}
          onChoose={setMishap}
        />
        <Choice
          legend={words.response}
          options={mishapResponses.map((key) => ({
            key,
            text: words.responses[key],
            ...(key === usualResponse[mishap] && { mark: words.usual }),
          }))}
          chosen={response}
          onChoose={setChosen}
        />
        {groups.length > 0 && (
          <Choice
            legend={words.group}
            options={[
              { key: '', text: words.anyGroup },
              ...groups.map(({ key, title }) => ({ key, text: title })),
            ]}
            chosen={of ?? ''}
            onChoose={setGroup}
          />
        )}
        {takesOthers && <AloneChoice isAlone={isAlone} onChange={setIsAlone} />}
        <div className="field">
          <label htmlFor={`${id}-pieces`}>{words.pieces}</label>
          <input
            id={`${id}-pieces`}
            inputMode="numeric"
            value={pieces}
            onChange={(event) => setPieces(event.target.value)}
            aria-describedby={`${id}-hint`}
            aria-invalid={isWrong}
          />
          <p
            id={`${id}-hint`}
            className={isWrong ? 'wrong' : 'small soft'}
            role={isWrong ? 'alert' : undefined}
          >
            {isWrong ? words.badPieces(most) : words.allPieces}
          </p>
        </div>
        <div className="field">
          <label htmlFor={`${id}-note`}>{words.note}</label>
          <textarea
            id={`${id}-note`}
            rows={2}
            maxLength={2000}
            value={note}
            onChange={(event) => setNote(event.target.value)}
          />
        </div>
        <div className="actions">
          <button type="submit" className="button warn">
            {words.save}
          </button>
          <button type="button" className="button" onClick={onClose}>
            {words.cancel}
          </button>
        </div>
      </form>
    </Dialog>
  );
}

function Choice<K extends string>({
  legend,
  options,
  chosen,
  onChoose,
}: {
  readonly legend: string;
  readonly options: readonly { readonly key: K; readonly text: string; readonly mark?: string }[];
  readonly chosen: K;
  readonly onChoose: (key: K) => void;
}): ReactNode {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend>{legend}</legend>
      {options.map(({ key, text, mark }) => (
        <label key={key}>
          <input type="radio" name={name} checked={key === chosen} onChange={() => onChoose(key)} />
          <span>
            {text} {mark !== undefined && <span className="soft small">({mark})</span>}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

/** Parts that something can go wrong with: those that are made here. */
function partsOf({ amounts, stages }: RunPlan): { readonly key: string; readonly title: string }[] {
  const made = new Set(stages.filter(({ kind }) => makesPart(kind)).map(({ part }) => part));
  return amounts.filter(({ part }) => made.has(part)).map(({ part, title }) => ({ key: part, title }));
}
