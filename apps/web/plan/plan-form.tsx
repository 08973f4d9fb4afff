import { useMemo, useState, type ReactNode } from 'react';
import { Link } from 'react-router';
import type { PlanInput } from '#contract';
import { serverNow } from '../api/server-time.js';
import { Failed } from '../shell/states.js';
import { useWhatIf } from '../whatif/use-what-if.js';
import { useWords } from '../words/words.js';
import { ChooseDesign } from './choose-design.js';
import { mostPieces } from './fillable.js';
import { localAt, nextHour } from './local-times.js';
import { MouldsCheck } from './moulds-check.js';
import { groupsOf, titled } from './draft-groups.js';
import { Gist } from './gist.js';
import { Groups } from './groups.js';
import { Outcome } from './outcome.js';
import { recipesOf, revivedDraft, wishOf, type PlanDraft } from './plan-draft.js';
import { RecipeSliders } from './recipe-sliders.js';
import { Slider } from './slider.js';
import { useSavedDraft } from './use-saved-draft.js';
import { useSaveRun } from './use-save-run.js';
import { When } from './when.js';

/** What can be moved on one side, what comes of it on the other. */
export function PlanForm({ input }: { readonly input: PlanInput }): ReactNode {
  const { plan } = useWords();
  const zone = input.workshop.timeZone;
  const [now] = useState(() => nextHour(localAt(serverNow(), zone)));
  const [draft, setDraft, forget] = useSavedDraft('benchtide.plan-draft', (text) => revivedDraft(text, now));
  const change = (part: Partial<PlanDraft>): void => setDraft((before) => ({ ...before, ...part }));
  const design = input.designs.find(({ key }) => key === draft.design);
  const base = useMemo(() => ({ input }), [input]);
  const groups = draft.groups === null ? null : titled(draft.groups, plan.groups.name);
  const named = { ...draft, groups };
  const wish = wishOf(named, input, now);
  const state = useWhatIf(wish === null ? null : { base, wish });
  const latest = state.told?.outcome.ok === true ? state.told.outcome.latest : undefined;
  const begin =
    state.isSettled && typeof latest?.beginAt === 'string' ? localAt(Date.parse(latest.beginAt), zone) : null;
  const saving = useSaveRun(named, input, begin, forget);
  const most = design === undefined ? 1 : mostPieces(design, input.moulds);
  return (
    <div className="stack plan-a-run">
      <header className="stack tight">
        <h1>{plan.title}</h1>
        <p className="soft">{plan.intro}</p>
      </header>
      <ChooseDesign
        designs={input.designs}
        moulds={input.moulds}
        chosen={draft.design}
        onChoose={(key) => {
          const chosen = input.designs.find((each) => each.key === key);
          const enough = chosen === undefined ? 1 : Math.max(1, mostPieces(chosen, input.moulds));
          change({ design: key, count: Math.min(draft.count, enough), groups: null, title: null });
        }}
      />
      <p>
        <Link className="tap" to="?step=mould">
          {plan.describeNew}
        </Link>
      </p>
      {design === undefined ? (
        <p className="note">{plan.choose}</p>
      ) : (
        <div className="sides">
          {wish !== null && <Gist state={state} />}
          <form
            className="stack"
            onSubmit={(event) => {
              event.preventDefault();
              saving.save();
            }}
          >
            <fieldset className="stack">
              <legend>{plan.howMany}</legend>
              <Slider
                label={plan.pieces}
                value={draft.count}
                text={plan.pieceCount(draft.count)}
                low={1}
                high={Math.max(most, draft.count, 2)}
                step={1}
                onChange={(count) => change({ count })}
              />
              <MouldsCheck
                design={design}
                moulds={input.moulds}
                count={draft.count}
                groups={groups === null ? undefined : groupsOf(groups, draft.count)}
              />
            </fieldset>
            <Groups
              key={`groups ${design.key}`}
              design={design}
              count={draft.count}
              groups={draft.groups}
              onChange={(groups) => change({ groups })}
              onCount={(count) => change({ count })}
            />
            <When draft={draft} now={now} onChange={change} />
            <RecipeSliders
              key={design.key}
              recipes={recipesOf(draft.design, input)}
              draft={draft}
              onChange={(recipes) => change({ recipes })}
            />
            <div className="field">
              <label htmlFor="run-title">{plan.name}</label>
              <input
                id="run-title"
                value={draft.title ?? design.title}
                maxLength={120}
                onChange={({ target }) => change({ title: target.value })}
              />
            </div>
            {saving.error !== null && <Failed error={saving.error} again={saving.save} />}
            <div className="stack tight">
              <button type="submit" className="button main" aria-disabled={!saving.isReady}>
                {saving.isSaving ? plan.saving : plan.save}
              </button>
              <p className="soft small">{plan.saveHow}</p>
            </div>
          </form>
          <section className="card outcome" aria-label={plan.outcome}>
            <h2>{plan.outcome}</h2>
            {wish !== null && draft.aim === 'by' && !state.isSettled && (
              <p className="note" role="status">
                {plan.countingBack}
              </p>
            )}
            {wish === null ? <p className="note">{plan.groups.unready}</p> : <Outcome state={state} />}
          </section>
        </div>
      )}
    </div>
  );
}
