import type { ReactNode } from 'react';
import type { PatternName } from './patterns.js';

/** What a pattern comes to, seen from the side; the words beside it say the same. */
export function PatternPicture({ name }: { readonly name: PatternName }): ReactNode {
  return (
    <svg className="pattern-picture" viewBox="0 0 56 44" width="56" height="44" aria-hidden>
      {pictures[name]}
    </svg>
  );
}

const body = <rect x="8" y="14" width="40" height="24" rx="5" className="one" />;

const pictures: Readonly<Record<PatternName, ReactNode>> = {
  cast: body,
  layers: (
    <>
      <path d="M8 22q10-4 20 0t20 0v11a5 5 0 0 1-5 5H13a5 5 0 0 1-5-5z" className="one" />
      <path d="M8 24v-5a5 5 0 0 1 5-5h30a5 5 0 0 1 5 5v5q-10 4-20 0t-20 0z" className="two" />
    </>
  ),
  loaf: (
    <>
      <rect x="4" y="24" width="48" height="14" rx="3" className="one" />
      <rect x="4" y="12" width="48" height="13" rx="3" className="two" />
      <path d="M16 9v32M28 9v32M40 9v32" className="knife" />
    </>
  ),
  swirl: (
    <>
      <rect x="4" y="12" width="48" height="26" rx="3" className="one" />
      <path d="M6 30q8-22 16-6t14-4 14-4v10q-8 8-14 2t-14 4-16 4z" className="two" />
      <path d="M16 9v32M28 9v32M40 9v32" className="knife" />
    </>
  ),
  halves: (
    <>
      <path d="M10 23a18 18 0 0 1 36 0z" className="one" />
      <path d="M10 29a18 14 0 0 0 36 0z" className="one" />
      <rect x="8" y="23" width="40" height="6" rx="3" className="two" />
    </>
  ),
  coated: (
    <>
      <rect x="4" y="9" width="48" height="32" rx="9" className="two" />
      {body}
    </>
  ),
  piped: (
    <>
      {body}
      <path d="M10 15q3-9 8-3 2-10 9-3 6-8 10 1 6-4 9 5z" className="two" />
    </>
  ),
  embeds: (
    <>
      {body}
      <path d="M17 20h8v8h-8zM31 24h8v8h-8z" className="two" />
    </>
  ),
  decor: (
    <>
      {body}
      <circle cx="19" cy="14" r="5" className="two" />
      <circle cx="32" cy="12" r="4" className="three" />
      <circle cx="41" cy="15" r="3" className="two" />
    </>
  ),
};
