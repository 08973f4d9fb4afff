import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { WaitingLines } from './waiting-lines.js';

/** The head of a page of the stock: the way back, its title and lead, and what could not be entered yet. */
export function StockHead({
  back,
  title,
  lead,
  children,
}: {
  readonly back: { readonly to: string; readonly text: string };
  readonly title: string;
  readonly lead?: string;
  readonly children?: ReactNode;
}): ReactNode {
  return (
    <>
      <header className="stack tight">
        <p>
          <Link className="tap" to={back.to}>
            {back.text}
          </Link>
        </p>
        <h1>{title}</h1>
        {lead !== undefined && <p className="soft">{lead}</p>}
        {children}
      </header>
      <WaitingLines />
    </>
  );
}
