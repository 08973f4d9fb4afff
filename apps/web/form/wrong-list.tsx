import { use, useEffect, useReducer, useRef, type ReactNode } from 'react';
import { pathText, type Issue } from '#units';
import { useTexts } from '../look/use-texts.js';
import type { Texts } from '#words';
import { useWords } from '../words/words.js';
import { fieldId, FormContext } from './form-context.js';
import { nameOf } from './name-of.js';

/**
 * Everything that is wrong in one place, each with the way to its field. When `since` changes, the first of these fields
 * takes the focus, or the list where none of them is on the page.
 */
export function WrongList({
  issues,
  since,
  around = () => undefined,
}: {
  readonly issues: readonly Issue[];
  readonly since: number;
  /** What the thing is called in which a field stands, where there are several alike. */
  readonly around?: (path: Issue['path']) => string | undefined;
}): ReactNode {
  const { form } = useWords();
  const texts = useTexts();
  const scope = use(FormContext)?.scope;
  const ref = useRef<HTMLDivElement>(null);
  // Names are read off the page, so they are a drawing late where its language or units change.
  const [, drawAgain] = useReducer((times: number) => times + 1, 0);
  useEffect(() => drawAgain(), [texts]);
  useEffect(() => {
    if (since === 0) return;
    const [first] = issues.flatMap((issue) => nearest(issue, scope) ?? []).sort(inPageOrder);
    if (first === undefined) ref.current?.focus();
    else show(first);
    // What is wrong later on must not take the focus from what is being typed.
    // oxlint-disable-next-line hooks/exhaustive-deps
  }, [since]);
  if (issues.length === 0) return null;
  return (
    <div
      ref={ref}
      id="wrong"
      tabIndex={-1}
      className="note coral stack tight"
      role="group"
      aria-label={form.wrongTitle(issues.length)}
    >
      <p>
        <strong>{form.wrongTitle(issues.length)}</strong>
      </p>
      <ul>
        {issues.map((issue) => (
          <li key={`${issue.code} ${pathText(issue.path)}`}>
            <a
              href={`#${fieldId(issue.path, scope)}`}
              onClick={(event) => {
                event.preventDefault();
                const field = nearest(issue, scope);
                if (field !== null) show(field);
              }}
            >
              {placeOf(issue, scope, texts, around(issue.path))}
              {texts.issue(issue)}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Which field an issue is about, in front of its sentence; one of the whole thing has no place. */
function placeOf(issue: Issue, scope: string | undefined, texts: Texts, around: string | undefined): string {
  if (issue.path.length === 0) return '';
  const name =
    nameOf(issue.path, scope) ?? (nearest(issue, scope) === null ? texts.fieldName(issue.path) : undefined);
  const names = [around, name].filter((each) => each !== undefined);
  return names.length === 0 ? '' : `${names.join(', ')}: `;
}

/** Brings a field into view, whatever is closed around it, and puts the focus there. */
function show(field: HTMLElement): void {
  const isSummary = field.tagName === 'SUMMARY';
  for (let at = field.closest('details'); at !== null; at = at.parentElement?.closest('details') ?? null)
    at.open = true;
  field.scrollIntoView({ block: isSummary ? 'start' : 'center' });
  field.focus();
}

function inPageOrder(a: HTMLElement, b: HTMLElement): number {
  if (a === b) return 0;
  return (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING) === 0 ? 1 : -1;
}

/** The field itself, or the one nearest around it: an issue of a list has no field of its own. */
function nearest({ path }: Issue, scope: string | undefined): HTMLElement | null {
  for (let length = path.length; length > 0; length -= 1) {
    const found = document.getElementById(fieldId(path.slice(0, length), scope));
    if (found !== null) return found;
  }
  return null;
}
