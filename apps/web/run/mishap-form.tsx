import { useMutation } from '@tanstack/react-query';
import { useState, type SubmitEvent, type ReactNode } from 'react';
import { mishapKinds, mishapResponses } from '#contract/names';
import { serverNow } from '../api/server-time.js';
import { groupsToChoose, mostAffected } from '../look/affected-groups.js';
import { useWords } from '../words/words.js';
import { AloneChoice, spoilsOthers } from './alone-choice.js';
import { MishapAnswers, type MishapAnswer } from './mishap-answers.js';
import type { Mishap, RunProps } from './run-props.js';
import { whatIf } from './use-run.js';

/** Something went wrong: what each answer to it would do, before one is logged. */
export function MishapForm({ run, plan }: RunProps): ReactNode {
  const { mishap: words } = useWords().run;
  const own = plan.document.runs.find((each) => each.run === run.key);
  const parts = own?.amounts ?? [];
  const [part, setPart] = useState(parts[0]?.part ?? '');
  const [mishap, setMishap] = useState<Mishap['mishap']>('seized');
  const [group, setGroup] = useState('');
  const [pieces, setPieces] = useState('');
  const groups = groupsToChoose(own ?? {}, part);
  const of = groups.find(({ key }) => key === group)?.key;
  const [isAlone, setIsAlone] = useState(false);
  const takesOthers = own !== undefined && spoilsOthers(own, part, mishap);
  const { mutate, data, isPending, reset } = useMutation({
    mutationFn: async (): Promise<MishapAnswer[]> => {
      const base: Mishap = {
        kind: 'mishap',
        part,
        mishap,
        at: new Date(serverNow()).toISOString(),
        ...(of !== undefined && { group: of }),
        ...(pieces !== '' && { pieces: Number(pieces) }),
        ...(takesOthers && isAlone && { alone: true }),
      };
      // One after the other, as the API works them out one after the other anyway.
      const answers: MishapAnswer[] = [];
      for (const response of mishapResponses) {
        const entry = { ...base, response };
        const tried = await whatIf(run.id, { entries: [entry] }).then(
          (answer) => ({ answer }),
          (error: unknown) => ({ error: error instanceof Error ? error : new Error(String(error)) }),
        );
        answers.push({ entry, response, ...tried });
      }
      return answers;
    },
  });
  if (parts.length === 0) return null;
  const change = (act: () => void) => () => {
    act();
    reset();
  };
  const sent = (event: SubmitEvent): void => {
    event.preventDefault();
    mutate();
  };
  return (
    <details className="card" open={data !== undefined ? true : undefined}>
      <summary>
        <h2>{words.title}</h2>
      </summary>
      <form className="stack tight" onSubmit={sent}>
        <p className="soft">{words.intro}</p>
        <div className="run-mishap">
          <label className="field">
            <span className="label">{words.part}</span>
            <select value={part} onChange={(event) => change(() => setPart(event.target.value))()}>
              {parts.map((each) => (
                <option key={each.part} value={each.part}>
                  {each.title}
                </option>
              ))}
            </select>
          </label>
          <label className="field">
            <span className="label">{words.what}</span>
            <select
              value={mishap}
              onChange={(event) => change(() => setMishap(event.target.value as Mishap['mishap']))()}
            >
              {mishapKinds.map((kind) => (
                <option key={kind} value={kind}>
                  {words.kinds[kind]}
                </option>
              ))}
            </select>
          </label>
          {groups.length > 0 && (
            <label className="field">
              <span className="label">{words.group}</span>
              <select value={of ?? ''} onChange={(event) => change(() => setGroup(event.target.value))()}>
                <option value="">{words.anyGroup}</option>
                {groups.map(({ key, title }) => (
                  <option key={key} value={key}>
                    {title}
                  </option>
                ))}
              </select>
            </label>
          )}
          <label className="field">
            <span className="label">{words.pieces}</span>
            <input
              type="number"
              inputMode="numeric"
              min={1}
              max={own === undefined ? run.order.count : mostAffected(own, part, of)}
              value={pieces}
              onChange={(event) => change(() => setPieces(event.target.value))()}
            />
            <span className="small soft">{words.allPieces}</span>
          </label>
        </div>
        {takesOthers && <AloneChoice isAlone={isAlone} onChange={(now) => change(() => setIsAlone(now))()} />}
        {(mishap === 'seized' || mishap === 'separated') && <p className="note coral small">{words.mind}</p>}
        <p>
          <button type="submit" className="button main" disabled={isPending}>
            {isPending ? words.seeing : words.see}
          </button>
        </p>
      </form>
      {data !== undefined && <MishapAnswers run={run} plan={plan} answers={data} onLogged={reset} />}
    </details>
  );
}
