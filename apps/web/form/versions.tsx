import { useEffect, useRef, type ReactNode } from 'react';
import { useWords } from '../words/words.js';
import { nameOf } from './name-of.js';
import { pathOf } from './path-of.js';
import { differences, type Group, type Value } from './values.js';

/** Two versions of one thing side by side, where they differ, and the choice between them. */
export function Versions({
  mine,
  theirs,
  onMine,
  onTheirs,
}: {
  readonly mine: Value;
  readonly theirs: Value;
  readonly onMine: () => void;
  readonly onTheirs: () => void;
}): ReactNode {
  const { form } = useWords();
  const ref = useRef<HTMLElement>(null);
  useEffect(() => ref.current?.focus(), []);
  const shown = (value: Value): string => {
    if (value === undefined || value === null) return form.nothing;
    if (typeof value === 'boolean') return value ? form.yes : form.no;
    if (typeof value !== 'object') return String(value);
    return (
      Object.values(value as Group)
        .map(shown)
        .join(', ') || form.nothing
    );
  };
  return (
    <section ref={ref} tabIndex={-1} className="note amber stack" aria-label={form.staleTitle}>
      <div className="stack tight">
        <h2>{form.staleTitle}</h2>
        <p>{form.staleHow}</p>
      </div>
      <div className="scroll-x" tabIndex={0} role="group" aria-label={form.staleTitle}>
        <table className="versions">
          <thead>
            <tr>
              <th scope="col">{form.where}</th>
              <th scope="col">{form.mine}</th>
              <th scope="col">{form.theirs}</th>
            </tr>
          </thead>
          <tbody>
            {differences(mine, theirs).map((each) => (
              <tr key={each.path}>
                <th scope="row">{nameOf(pathOf(each.path)) ?? each.path}</th>
                <td>{shown(each.mine)}</td>
                <td>{shown(each.theirs)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="row">
        <button type="button" className="button main" onClick={onMine}>
          {form.keepMine}
        </button>
        <button type="button" className="button" onClick={onTheirs}>
          {form.takeTheirs}
        </button>
      </div>
    </section>
  );
}
