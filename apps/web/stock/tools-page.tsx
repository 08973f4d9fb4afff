import type { ReactNode } from 'react';
import { Link } from 'react-router';
import type { Schemas } from '../api/client.js';
import { TextField } from '../form/fields.js';
import { FormContext } from '../form/form-context.js';
import { ListEditor } from '../form/list-editor.js';
import { NumberField } from '../form/number-field.js';
import { listAt, textAt, type Path, type Value } from '../form/values.js';
import { Versions } from '../form/versions.js';
import { WrongList } from '../form/wrong-list.js';
import { useFacts } from '../hours/use-facts.js';
import { newKey } from '../library/new-key.js';
import { useWorkshop } from '../library/shelf-calls.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { useStockWords } from './stock-words.js';
import '../form/form.css';
import '../library/library.css';

/** Trays and tools, and what everything is reckoned in. */
export default function ToolsPage(): ReactNode {
  const { data, error, refetch } = useWorkshop();
  if (data !== undefined) return <ToolsForm stored={data} />;
  return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
}

function ToolsForm({ stored }: { readonly stored: Schemas['StoredWorkshop'] }): ReactNode {
  const words = useStockWords();
  const { library, form } = useWords();
  const facts = useFacts(stored);
  const { draft, stale } = facts;
  const change = (path: Path, value: Value): void => draft.change(path, value);
  return (
    <FormContext value={{ content: draft.content, change, issues: facts.issues }}>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void facts.save();
        }}
      >
        <header className="stack tight">
          <p>
            <Link className="tap" to="/makings">
              {library.back}
            </Link>
          </p>
          <h1>{words.tools}</h1>
          <p className="soft">{words.toolsLead}</p>
        </header>
        {stale !== null && (
          <Versions
            mine={draft.content}
            theirs={stale.facts}
            onMine={() => void facts.resolve('mine')}
            onTheirs={() => void facts.resolve('theirs')}
          />
        )}
        <section className="card stack tight">
          <ListEditor
            path={['equipment']}
            title={words.equipment}
            add={words.addTool}
            most={50}
            make={() => ({ key: freeKey(draft.content), count: 1 })}
          >
            {(path) => <ToolFields path={path} />}
          </ListEditor>
          <p className="soft small">{words.equipmentHint}</p>
        </section>
        <section className="card stack" aria-labelledby="prices">
          <h2 id="prices">{words.prices}</h2>
          <div className="fields">
            <TextField
              path={['currency']}
              label={words.currency}
              hint={words.currencyHint}
              isName
              onSet={(text) => draft.change(['currency'], text?.trim().toUpperCase())}
            />
            <NumberField path={['hourlyRate']} label={words.hourlyRate} hint={words.hourlyRateHint} />
          </div>
        </section>
        {facts.tries > 0 && <WrongList issues={facts.issues} since={facts.tries} />}
        {facts.error !== null && <Failed error={facts.error} again={() => void facts.save()} />}
        <div className={draft.isChanged ? 'save-bar stuck row' : 'save-bar row'}>
          <button type="submit" className="button main" disabled={facts.isSaving || !draft.isChanged}>
            {facts.isSaving ? form.saving : form.save}
          </button>
          {draft.isChanged && (
            <button type="button" className="button plain" onClick={draft.drop}>
              {form.discard}
            </button>
          )}
          <p role="status" className="soft small">
            {draft.isChanged ? form.unsaved : facts.isSaved ? form.saved : ''}
          </p>
        </div>
      </form>
    </FormContext>
  );
}

function ToolFields({ path }: { readonly path: Path }): ReactNode {
  const words = useStockWords();
  return (
    <div className="fields">
      <TextField path={[...path, 'title']} label={words.toolName} />
      <NumberField path={[...path, 'count']} label={words.toolCount} />
    </div>
  );
}

/** Designs refer to a tool by its key, so that has to stay when the name is changed. */
function freeKey(content: Value): string {
  const taken = listAt(content, ['equipment']).map((each) => textAt(each, ['key']));
  return newKey('tool', taken);
}
