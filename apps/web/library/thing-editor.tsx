import { useEffect, useState, type ReactNode } from 'react';
import { Link, useNavigate, useSearchParams } from 'react-router';
import type { Issue } from '#units';
import { FormContext } from '../form/form-context.js';
import { useDraft, type Draft } from '../form/use-draft.js';
import { valueAt, withValue, type Value } from '../form/values.js';
import { Versions } from '../form/versions.js';
import { WrongList } from '../form/wrong-list.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { Archive } from './archive.js';
import type { Around } from './checks.js';
import { titleAround } from './design/issue-places.js';
import { backToPiece, forPieceIn } from './design/made-for-piece.js';
import { newKey } from './new-key.js';
import type { Kind, Thing } from './shelf-calls.js';
import { useSaving } from './use-saving.js';
import '../form/form.css';
import './library.css';

/** Long enough that a number is not called wrong while it is being typed. */
const PATIENCE_MS = 600;

/**
 * A page on which one thing is described: heading, fields, saving, and what may come in the way of it.
 * @param thing what is stored; null for something new
 * @param blank what something new begins with
 */
export function ThingEditor({
  kind,
  thing,
  blank,
  around,
  taken,
  seen = [],
  children,
}: {
  readonly kind: Kind;
  readonly thing: Thing | null;
  readonly blank: Value;
  readonly around: Around;
  /** Short names in use. */
  readonly taken: readonly string[];
  /** What else was found, by a preview for example. */
  readonly seen?: readonly Issue[];
  readonly children: (draft: Draft) => ReactNode;
}): ReactNode {
  const { library } = useWords();
  const navigate = useNavigate();
  const [search] = useSearchParams();
  const forPiece = kind === 'recipes' || kind === 'moulds' ? forPieceIn(search) : null;
  const stored =
    thing === null ? null : { content: thing.content as unknown as Value, version: thing.version };
  const draft = useDraft(`${kind}.${thing?.id ?? 'new'}`, stored, blank);
  const check = async (content: Value): Promise<readonly Issue[]> =>
    (await import('./checks.js')).issuesIn(kind, content, around);
  const complete = (content: Value): Value =>
    thing !== null
      ? content
      : withValue(content, ['key'], newKey(textOf(valueAt(content, ['title'])), taken));
  const saving = useSaving(kind, thing?.id, draft, complete, check, (made) => {
    const to =
      forPiece !== null && (kind === 'recipes' || kind === 'moulds')
        ? backToPiece(forPiece, kind, made.content.key)
        : `/makings/${kind}/${made.id}`;
    void navigate(to, { replace: true });
  });
  const live = useLiveIssues(complete(draft.content), check, saving.tries > 0);
  const refused = saving.tries > 0 && live.length === 0 ? saving.issues : [];
  const issues = distinct([...live, ...refused, ...seen]);
  const title = textOf(valueAt(draft.content, ['title']));
  return (
    <FormContext value={{ content: draft.content, change: draft.change, issues }}>
      <form
        className="stack editor"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void saving.save();
        }}
      >
        <header className="stack tight">
          <p>
            {forPiece === null ? (
              <Link className="tap" to="/makings">
                {library.back}
              </Link>
            ) : (
              <Link className="tap" to={`/makings/designs/${forPiece.piece}`}>
                {library.backToPiece}
              </Link>
            )}
          </p>
          <h1>{title.trim() === '' ? library.newOf[kind] : title}</h1>
        </header>
        {saving.stale !== null && (
          <Versions
            mine={draft.content}
            theirs={saving.stale.content}
            onMine={() => void saving.resolve('mine')}
            onTheirs={() => void saving.resolve('theirs')}
          />
        )}
        {children(draft)}
        {saving.tries > 0 && (
          <WrongList
            issues={issues}
            since={saving.tries}
            around={kind === 'designs' ? (path) => titleAround(draft.content, path, library) : undefined}
          />
        )}
        {saving.error !== null && <Failed error={saving.error} again={() => void saving.save()} />}
        <SaveBar
          draft={draft}
          isNew={thing === null}
          isSaving={saving.isSaving}
          isSaved={saving.isSaved}
          wrong={saving.tries > 0 ? issues.length : 0}
        />
        {thing !== null && <Archive kind={kind} thing={thing} onGone={draft.drop} />}
      </form>
    </FormContext>
  );
}

function SaveBar({
  draft,
  isNew,
  isSaving,
  isSaved,
  wrong,
}: {
  readonly draft: Draft;
  readonly isNew: boolean;
  readonly isSaving: boolean;
  readonly isSaved: boolean;
  /** How many things are in the way of saving. */
  readonly wrong: number;
}): ReactNode {
  const { form } = useWords();
  return (
    <div className={draft.isChanged ? 'save-bar stuck row' : 'save-bar row'}>
      <button type="submit" className="button main" disabled={isSaving || (!draft.isChanged && !isNew)}>
        {isSaving ? form.saving : form.save}
      </button>
      {draft.isChanged && (
        <button type="button" className="button plain" onClick={draft.drop}>
          {form.discard}
        </button>
      )}
      <p role="status" className="soft small">
        {wrong > 0 ? (
          <a href="#wrong" className="wrong">
            {form.wrongTitle(wrong)}
          </a>
        ) : draft.isChanged ? (
          form.unsaved
        ) : isSaved ? (
          form.saved
        ) : (
          ''
        )}
      </p>
    </div>
  );
}

/** What is wrong as it stands, a moment after the last change; what is only missing is not told before it is missed. */
function useLiveIssues(
  content: Value,
  check: (content: Value) => Promise<readonly Issue[]>,
  isMissed: boolean,
): readonly Issue[] {
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const text = JSON.stringify(content);
  useEffect(() => {
    let isWanted = true;
    const timer = setTimeout(() => {
      void check(JSON.parse(text) as Value).then((found) => {
        if (isWanted) setIssues(found);
      });
    }, PATIENCE_MS);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
    // What is checked is the text; the check itself is made anew at each drawing.
    // oxlint-disable-next-line hooks/exhaustive-deps
  }, [text]);
  return isMissed
    ? issues
    : issues.filter(({ value, code }) => value !== undefined && !code.startsWith('input.too-small'));
}

function distinct(issues: readonly Issue[]): Issue[] {
  const seen = new Map(issues.map((issue) => [JSON.stringify(issue), issue]));
  return [...seen.values()];
}

function textOf(value: Value): string {
  return typeof value === 'string' ? value : '';
}
