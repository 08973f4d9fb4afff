import { useId, useState, type ReactNode } from 'react';
import type { RunPlan } from '#contract';
import { mishapKinds, type MishapKind } from '#contract/names';
import { makesPart } from '#runs';
import { serverNow } from '../api/server-time.js';
import { Choice } from '../form/choice.js';
import { groupsToChoose, mostAffected } from '../look/affected-groups.js';
import { useWords } from '../words/words.js';
import { AloneChoice, spoilsOthers } from './alone-choice.js';
import './mishap.css';
import { MishapAnswers, type MishapAnswersProps } from './mishap-answers.js';
import type { Mishap } from './run-props.js';

/** Something went wrong: as soon as it is known what, it shows what each answer would do, before one is logged. */
export function MishapForm({
  own,
  likely,
  ...answers
}: Omit<MishapAnswersProps, 'own' | 'mishap'> & {
  readonly own: RunPlan;
  /** The part that is at hand; absent: the first. */
  readonly likely?: string;
}): ReactNode {
  const { mishap: words } = useWords().run;
  const id = useId();
  const parts = partsOf(own);
  const [at] = useState(() => new Date(serverNow()).toISOString());
  const [chosen, setPart] = useState(likely);
  const part = (parts.find(({ key }) => key === chosen) ?? parts[0])?.key ?? '';
  const [kind, setKind] = useState<MishapKind | ''>('');
  const [group, setGroup] = useState('');
  const [pieces, setPieces] = useState('');
  const [isAlone, setIsAlone] = useState(false);
  const [note, setNote] = useState('');
  const groups = groupsToChoose(own, part);
  const of = groups.find(({ key }) => key === group)?.key;
  const most = mostAffected(own, part, of);
  const count = pieces.trim() === '' ? undefined : Number(pieces);
  const fits = count === undefined || (Number.isInteger(count) && count >= 1 && count <= most);
  const takesOthers = kind !== '' && spoilsOthers(own, part, kind);
  const mishap: Mishap | undefined =
    kind === '' || !fits
      ? undefined
      : {
          ...{ kind: 'mishap', part, mishap: kind, at },
          ...(of !== undefined && { group: of }),
          ...(count !== undefined && { pieces: count }),
          ...(takesOthers && isAlone && { alone: true }),
        };
  if (parts.length === 0) return null;
  return (
    <div className="stack mishap-form">
      {parts.length > 1 && (
        <Choice
          legend={words.part}
          name={`${id}-part`}
          value={part}
          options={parts.map(({ key, title }) => ({ value: key, text: title }))}
          onChoose={setPart}
        />
      )}
      <Choice<MishapKind | ''>
        legend={words.what}
        name={`${id}-kind`}
        value={kind}
        options={mishapKinds.map((value) => ({ value, text: words.happened[value] }))}
        onChoose={setKind}
      />
      {(kind === 'seized' || kind === 'separated') && <p className="note coral small">{words.mind}</p>}
      {groups.length > 0 && (
        <Choice
          legend={words.group}
          name={`${id}-group`}
          value={of ?? ''}
          options={[
            { value: '', text: words.anyGroup },
            ...groups.map(({ key, title }) => ({ value: key, text: title })),
          ]}
          onChoose={setGroup}
        />
      )}
      {takesOthers && <AloneChoice isAlone={isAlone} onChange={setIsAlone} />}
      <details>
        <summary>{words.onlySome}</summary>
        <div className="mishap-fields">
          <div className="field">
            <label htmlFor={`${id}-pieces`}>{words.pieces}</label>
            <input
              id={`${id}-pieces`}
              inputMode="numeric"
              autoComplete="off"
              value={pieces}
              onChange={({ target }) => setPieces(target.value)}
              aria-describedby={`${id}-hint`}
              aria-invalid={!fits}
            />
            <p id={`${id}-hint`} className={fits ? 'small soft' : 'wrong'} role={fits ? undefined : 'alert'}>
              {fits ? words.allPieces : words.badPieces(most)}
            </p>
          </div>
          <div className="field">
            <label htmlFor={`${id}-note`}>{words.note}</label>
            <textarea
              id={`${id}-note`}
              rows={2}
              maxLength={2000}
              value={note}
              onChange={({ target }) => setNote(target.value)}
            />
          </div>
        </div>
      </details>
      {mishap === undefined ? (
        <p className="soft">{words.intro}</p>
      ) : (
        <MishapAnswers
          {...answers}
          own={own}
          mishap={mishap}
          // A note changes nothing of the plan, so no answer is worked out anew for it.
          onChoose={(entry) =>
            answers.onChoose({ ...entry, ...(note.trim() !== '' && { note: note.trim() }) })
          }
        />
      )}
    </div>
  );
}

/** Parts that something can go wrong with: those that are made here. */
function partsOf({ amounts, stages }: RunPlan): { readonly key: string; readonly title: string }[] {
  const made = new Set(stages.filter(({ kind }) => makesPart(kind)).map(({ part }) => part));
  return amounts.filter(({ part }) => made.has(part)).map(({ part, title }) => ({ key: part, title }));
}
