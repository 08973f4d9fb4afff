import { useEffect, useReducer, useRef, type ReactNode } from 'react';
import { pathText, type Issue } from '#units';
import { useTexts } from '../look/use-texts.js';
import type { Texts } from '#words';
import { useWords } from '../words/words.js';
import { fieldId } from './form-context.js';
import { nameOf } from './name-of.js';

/** Everything that is wrong in one place, each with the way to its field. Takes the focus when `since` changes. */
export function WrongList({
  issues,
  since,
}: {
  readonly issues: readonly Issue[];
  readonly since: number;
}): ReactNode {
  const { form } = useWords();
  const texts = useTexts();
  const ref = useRef<HTMLDivElement>(null);
  // Names are read off the page, so they are a drawing late where its language or units change.
  const [, drawAgain] = useReducer((times: number) => times + 1, 0);
  useEffect(() => drawAgain(), [texts]);
  useEffect(() => {
    if (since > 0) ref.current?.focus();
  }, [since]);
  if (issues.length === 0) return null;
  return (
    <div
      ref={ref}
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
              href={`#${fieldId(issue.path)}`}
              onClick={(event) => {
                event.preventDefault();
                const field = nearest(issue);
                field?.closest('details')?.setAttribute('open', '');
                field?.scrollIntoView({ block: 'center' });
                field?.focus();
              }}
            >
              {placeOf(issue, texts)}
              {texts.issue(issue)}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Which field an issue is about, in front of its sentence; one of the whole thing has no place. */
function placeOf(issue: Issue, texts: Texts): string {
  if (issue.path.length === 0) return '';
  const name = nameOf(issue.path) ?? (nearest(issue) === null ? texts.fieldName(issue.path) : undefined);
  return name === undefined ? '' : `${name}: `;
}

/** The field itself, or the one nearest around it: an issue of a list has no field of its own. */
function nearest({ path }: Issue): HTMLElement | null {
  for (let length = path.length; length > 0; length -= 1) {
    const found = document.getElementById(fieldId(path.slice(0, length)));
    if (found !== null) return found;
  }
  return null;
}
