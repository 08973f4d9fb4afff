import type { ReactNode } from 'react';

/** One entry of a legend: what is drawn, 24 by 16, and what it means. */
export function Sign({ text, children }: { readonly text: string; readonly children: ReactNode }): ReactNode {
  return (
    <span className="sign">
      <svg width="24" height="16" aria-hidden>
        {children}
      </svg>
      {text}
    </span>
  );
}
