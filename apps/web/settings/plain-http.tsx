import type { ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';

/** What a browser keeps from pages that came over plain http, and the way out; nothing where they came safely. */
export function PlainHttp(): ReactNode {
  const { plainHttp } = useSettingsWords();
  if (isSecureContext) return null;
  return (
    <section className="card stack tight" aria-labelledby="plain-http">
      <h2 id="plain-http">{plainHttp.title}</h2>
      <p>{plainHttp.works}</p>
      <ul>
        {plainHttp.missing.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p className="soft small">{plainHttp.wayOut}</p>
    </section>
  );
}
