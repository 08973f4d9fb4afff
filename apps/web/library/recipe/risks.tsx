import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';

const looks: Readonly<Record<Schemas['Risk']['level'], string>> = {
  low: 'note',
  medium: 'note amber',
  high: 'note coral',
};

/** What may go wrong, and what would help; the gravest first. */
export function Risks({ risks }: { readonly risks: readonly Schemas['Risk'][] }): ReactNode {
  const { library } = useWords();
  const texts = useTexts();
  const order = ['high', 'medium', 'low'];
  const sorted = [...risks].sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
  return (
    sorted.length > 0 && (
      <ul className="risks">
        {sorted.map((risk) => (
          <li key={JSON.stringify(risk)} className={`${looks[risk.level]} small`}>
            <strong>{library.levels[risk.level]}:</strong> {texts.of(risk)} {texts.remedyOf(risk)}
          </li>
        ))}
      </ul>
    )
  );
}
