import type { ReactNode } from 'react';
import { useWords } from '../words/words.js';

/** What the shapes and shades mean. */
export function Legend({ compared }: { readonly compared: boolean }): ReactNode {
  const { legend } = useWords().tide;
  const entries = ['window', 'sitting', 'hours', 'night', 'done', 'forecast', 'risk'] as const;
  return (
    <ul className="tide-legend small soft">
      {[...entries, ...(compared ? (['before'] as const) : [])].map((name) => (
        <li key={name}>
          <span className={`tide-sample ${name}`} aria-hidden />
          {legend[name]}
        </li>
      ))}
    </ul>
  );
}
