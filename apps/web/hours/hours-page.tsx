import { useMemo, type ReactNode } from 'react';
import { isTimeZone } from '#hours';
import { FormContext } from '../form/form-context.js';
import { textAt, valueAt } from '../form/values.js';
import { Versions } from '../form/versions.js';
import { WrongList } from '../form/wrong-list.js';
import type { Schemas } from '../api/client.js';
import { useWorkshop } from '../library/shelf-calls.js';
import { useNow } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { ExceptionsEditor } from './exceptions-editor.js';
import { Replan } from './replan.js';
import { QuietFields, RoomFields } from './room-fields.js';
import { useFacts, type FactsForm } from './use-facts.js';
import { useSittings } from './use-sittings.js';
import { WeekEditor } from './week-editor.js';
import { daysAhead } from './weeks.js';
import { WeeksPicture } from './weeks-picture.js';
import '../form/form.css';
import './hours.css';

const DAYS = 28;

/** When the maker can work and may be disturbed, and what that looks like in the coming weeks. */
export default function HoursPage(): ReactNode {
  const { data, error, refetch } = useWorkshop();
  if (data !== undefined) return <HoursForm stored={data} />;
  return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
}

function HoursForm({ stored }: { readonly stored: Schemas['StoredWorkshop'] }): ReactNode {
  const { hours } = useWords();
  const facts = useFacts(stored);
  const { draft, stale } = facts;
  return (
    <FormContext value={{ content: draft.content, change: draft.change, issues: facts.issues }}>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void facts.save();
        }}
      >
        <header className="stack tight">
          <h1>{hours.title}</h1>
          <p className="soft">{hours.lead}</p>
        </header>
        {stale !== null && (
          <Versions
            mine={draft.content}
            theirs={stale.facts}
            onMine={() => void facts.resolve('mine')}
            onTheirs={() => void facts.resolve('theirs')}
          />
        )}
        <div className="hours-page">
          <WeekEditor />
          <Weeks facts={facts} />
          <ExceptionsEditor />
          <QuietFields />
          <RoomFields />
        </div>
        {facts.tries > 0 && <WrongList issues={facts.issues} since={facts.tries} />}
        {facts.error !== null && <Failed error={facts.error} again={() => void facts.save()} />}
        {facts.isSaved && <Replan />}
        <SaveBar facts={facts} />
      </form>
    </FormContext>
  );
}

/** The picture of what stands in the form, so that a change is seen before it is saved. */
function Weeks({ facts }: { readonly facts: FactsForm }): ReactNode {
  const { hours } = useWords();
  const { content } = facts.draft;
  const { sittings, isIncomplete } = useSittings();
  const now = useNow(60_000);
  const typed = textAt(content, ['timeZone']);
  const zone = isTimeZone(typed) ? typed : 'UTC';
  const days = useMemo(
    () => daysAhead(valueAt(content, ['hours']) as never, zone, now, sittings, DAYS),
    [content, zone, now, sittings],
  );
  return (
    <div className="stack tight">
      <WeeksPicture days={days} zone={zone} />
      {isIncomplete && <p className="note amber small">{hours.sittingsFailed}</p>}
    </div>
  );
}

function SaveBar({ facts }: { readonly facts: FactsForm }): ReactNode {
  const { form } = useWords();
  const { draft, isSaving } = facts;
  return (
    <div className={draft.isChanged ? 'save-bar stuck row' : 'save-bar row'}>
      <button type="submit" className="button main" disabled={isSaving || !draft.isChanged}>
        {isSaving ? form.saving : form.save}
      </button>
      {draft.isChanged && (
        <button type="button" className="button plain" onClick={draft.drop}>
          {form.discard}
        </button>
      )}
      <p role="status" className="soft small">
        {draft.isChanged ? form.unsaved : ''}
      </p>
    </div>
  );
}
