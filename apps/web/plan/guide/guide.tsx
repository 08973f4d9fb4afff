import { useQuery } from '@tanstack/react-query';
import { useMemo, useState, type ReactNode } from 'react';
import { Link, useNavigate, useSearchParams } from 'react-router';
import type { PlanInput } from '#contract';
import '../../form/form.css';
import '../../library/library.css';
import { allRuns } from '../../api/all-runs.js';
import { newId } from '../../api/new-id.js';
import { serverNow } from '../../api/server-time.js';
import { Failed } from '../../shell/states.js';
import { useWhatIf } from '../../whatif/use-what-if.js';
import { useWords } from '../../words/words.js';
import { localAt, nextHour } from '../local-times.js';
import { useSavedDraft } from '../use-saved-draft.js';
import { checkGuide, type CheckedGuide } from './check-guide.js';
import { contentsOf, emptyGuide, revivedGuide, steps, withPart, type GuideDraft } from './guide-draft.js';
import { HoursStep } from './hours-step.js';
import { StartStep } from './start-step.js';
import { StepsBar } from './steps-bar.js';
import { MouldStep, RecipeStep } from './thing-steps.js';
import { useSaveGuide } from './use-save-guide.js';

/** From nothing to a planned run in four steps, each tried as it is filled in. */
export default function Guide({ input }: { readonly input: PlanInput }): ReactNode {
  const { guide } = useWords().plan;
  const [search] = useSearchParams();
  const navigate = useNavigate();
  const [now] = useState(() => nextHour(localAt(serverNow(), input.workshop.timeZone)));
  const [draft, setDraft, forget] = useSavedDraft('benchtide.guide-draft', (text) =>
    revivedGuide(text, now, guide.firstNames, newId),
  );
  const runs = useQuery({ queryKey: ['runs'], queryFn: allRuns });
  const taken = runs.data?.map(({ key }) => key) ?? [];
  const words = {
    ...{ part: guide.partTitle, pour: guide.stagePour },
    ...{ unmould: guide.stageUnmould, cut: guide.stageCut },
  };
  const contents = contentsOf(draft, input, taken, words);
  const checked = checkGuide(draft, contents, input);
  // The same object for the same content, or the worker would be sent all of it at each stroke of a key.
  const asText = JSON.stringify(checked.request);
  const request = useMemo(() => JSON.parse(asText) as CheckedGuide['request'], [asText]);
  const state = useWhatIf(request);
  const plan = state.told?.outcome.ok === true ? state.told.outcome.plan : undefined;
  const saving = useSaveGuide(
    input,
    (part, key) => setDraft((before) => ({ ...before, made: { ...before.made, [part]: key } })),
    forget,
  );
  const step = steps.find((each) => each === search.get('step')) ?? 'mould';
  const place = steps.indexOf(step);
  const change = (part: Partial<GuideDraft>): void => setDraft((before) => ({ ...before, ...part }));
  const changePart =
    (part: 'mould' | 'recipe') =>
    (content: GuideDraft['mould']): void =>
      setDraft((before) => withPart(before, part, content, newId));
  const isFine = checked.issues[step].length === 0;
  const isDone = steps.every((each) => checked.issues[each].length === 0);
  const forward = (): void => {
    if (step !== 'start') {
      if (isFine) void navigate(`?step=${steps[place + 1] ?? 'start'}`);
    } else if (isDone && runs.data !== undefined && !saving.isPending) saving.mutate({ draft, contents });
  };
  return (
    <form
      className="stack guide"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        forward();
      }}
    >
      <header className="stack tight">
        <h1>{guide.title}</h1>
        <p className="soft">{guide.intro}</p>
        {input.designs.length > 0 && (
          <p>
            <Link className="tap" to="/plan">
              {guide.orDemo}
            </Link>
          </p>
        )}
        <StepsBar step={step} issues={checked.issues} />
      </header>
      <h2>{guide.steps[step]}</h2>
      {step === 'mould' && (
        <MouldStep
          content={draft.mould}
          issues={checked.issues.mould}
          plan={plan}
          onChange={changePart('mould')}
          perCavity={draft.perCavity}
          onPerCavity={(perCavity) =>
            setDraft((before) => ({ ...withPart(before, 'mould', before.mould, newId), perCavity }))
          }
        />
      )}
      {step === 'recipe' && (
        <RecipeStep
          content={draft.recipe}
          issues={checked.issues.recipe}
          plan={plan}
          onChange={changePart('recipe')}
          input={input}
        />
      )}
      {step === 'hours' && (
        <HoursStep
          draft={draft}
          input={input}
          issues={checked.issues.hours}
          onChange={(days) => change({ days })}
        />
      )}
      {step === 'start' && <StartStep draft={draft} now={now} state={state} onChange={change} />}
      {saving.error !== null && <Failed error={saving.error} again={forward} />}
      <div className="row">
        {place > 0 && (
          <button
            type="button"
            className="button"
            onClick={() => void navigate(`?step=${steps[place - 1] ?? 'mould'}`)}
          >
            {guide.back}
          </button>
        )}
        <button type="submit" className="button main" aria-disabled={step === 'start' ? !isDone : !isFine}>
          {step === 'start' ? guide.finish : guide.next}
        </button>
        <button
          type="button"
          className="button plain"
          onClick={() => {
            setDraft(() => emptyGuide(now, guide.firstNames, newId));
            void navigate('?step=mould');
          }}
        >
          {guide.startOver}
        </button>
      </div>
      <p className="soft small" role="status">
        {!(step === 'start' ? isDone : isFine) && guide.stillWrong}
      </p>
    </form>
  );
}
