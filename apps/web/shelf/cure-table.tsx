import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { useAmounts } from '../look/amounts.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { weekly } from './cure-scales.js';

const DAY_MS = 86_400_000;

/** The expected course of a cure in words and numbers, week by week. */
export function CureTable({
  cure,
  startedAt,
}: {
  readonly cure: Schemas['CureCurve'];
  readonly startedAt: string;
}): ReactNode {
  const { shelf } = useWords();
  const times = useTimes();
  const { mass, number } = useAmounts();
  return (
    <details>
      <summary>{shelf.asTable}</summary>
      <div className="scroll-x" tabIndex={0} role="region" aria-label={shelf.asTable}>
        <table className="numbers">
          <thead>
            <tr>
              <th scope="col">{shelf.columns.when}</th>
              <th scope="col">{shelf.columns.expected}</th>
              <th scope="col">{shelf.columns.range}</th>
            </tr>
          </thead>
          <tbody>
            {weekly(cure.curve).map(({ days, pieceG }) => (
              <tr key={days}>
                <th scope="row">
                  {times.day(Date.parse(startedAt) + days * DAY_MS)}{' '}
                  <span className="soft small">{shelf.day(number(days, 0))}</span>
                </th>
                <td>{mass(pieceG.likely)}</td>
                <td>
                  {mass(pieceG.low)} – {mass(pieceG.high)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
