import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useWords } from '../../words/words.js';

const looks: Readonly<Record<Schemas['Risk']['level'], string>> = {
  low: 'note',
  medium: 'note amber',
  high: 'note coral',
};

/** What may go wrong, and what would help; the gravest first. */
export function Risks({ risks }: { readonly risks: readonly Schemas['Risk'][] }): ReactNode {
  const { library } = useWords();
  const order = ['high', 'medium', 'low'];
  const sorted = [...risks].sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
  return (
    sorted.length > 0 && (
      <ul className="risks">
        {sorted.map(({ code, level, text, remedy }) => (
          <li key={`${code} ${text}`} className={`${looks[level]} small`}>
            <strong>{library.levels[level]}:</strong> {text} {remedy}
          </li>
        ))}
      </ul>
    )
  );
}
