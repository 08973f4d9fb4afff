import { useEffect, useRef, type ReactNode } from 'react';
import { pathText } from '#units';
import { fieldId, useForm } from '../../form/form-context.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { issuesOfItem } from './issue-places.js';

/**
 * One part or stage: a line that says what it is, and all its fields once it is opened, which closes the one that was open.
 * @param isFresh it was added just now, and opens
 */
export function ItemDetails({
  list,
  index,
  title,
  line,
  isFresh,
  children,
}: {
  readonly list: 'parts' | 'stages';
  readonly index: number;
  readonly title: string;
  readonly line: string;
  readonly isFresh: boolean;
  readonly children: ReactNode;
}): ReactNode {
  const { library } = useWords();
  const { content, issues } = useForm();
  const texts = useTexts();
  const ref = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    // Not by its attribute: of several of one name that are put there open, a browser closes the later ones.
    if (isFresh && ref.current !== null) {
      ref.current.open = true;
      ref.current.querySelector('summary')?.focus();
    }
  }, [isFresh]);
  const wrong = issuesOfItem(content, issues, list, index);
  // What no field is about is said on top.
  const of = [pathText([list, index]), pathText([list, index, 'key'])];
  const whole = wrong.filter(({ path }) => of.includes(pathText(path)));
  return (
    <details ref={ref} name={list}>
      <summary id={fieldId([list, index])}>
        <strong>{title.trim() === '' ? library.noName : title}</strong>
        <span className="soft small">{line}</span>
        {wrong.length > 0 && <span className="small wrong">{library.stillOpen(wrong.length)}</span>}
      </summary>
      <div className="stack">
        {whole.map((issue) => (
          <p key={issue.code} className="wrong small">
            {texts.issue(issue)}
          </p>
        ))}
        {children}
      </div>
    </details>
  );
}
