import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import { useAmounts } from '../look/amounts.js';
import type { BatchSheet } from './use-sheet.js';
import { Sentence } from '../look/sentence.js';

/** Everything to have before the run begins, and what of it is missing. */
export function Gather({ sheet: { gather } }: { readonly sheet: BatchSheet }): ReactNode {
  const { amounts: words } = useWords().run;
  const { titled } = useTexts();
  const { mass, money } = useAmounts();
  const amount = (unit: 'g' | 'piece', value: number): string =>
    unit === 'g' ? mass(value) : words.each(Math.round(value));
  return (
    <section className="stack tight">
      <h2 id="gather">{words.gather}</h2>
      <p className="small">
        <Link className="tap" to="/makings/stock">
          {words.toStock}
        </Link>{' '}
        · <Link to="/makings/stock/to-buy">{words.toBuyAll}</Link>
      </p>
      <div className="scroll-x" tabIndex={0} role="group" aria-labelledby="gather">
        <table role="table" className="numbers run-gather">
          <thead>
            <tr>
              <th scope="col">{words.thing}</th>
              <th scope="col">{words.needed}</th>
              <th scope="col">{words.onHand}</th>
              <th scope="col">{words.buy}</th>
            </tr>
          </thead>
          <tbody role="rowgroup">
            {gather.lines.map((line) => (
              <tr key={`${line.kind} ${line.key}`} role="row">
                <th role="rowheader" scope="row">
                  {titled(line.key, line.title)}
                  {line.toBuy > 0 &&
                    line.cautions.map((caution) => (
                      <span key={caution.code} className="note amber small run-line-caution">
                        <Sentence of={caution} />
                      </span>
                    ))}
                </th>
                <td role="cell" data-label={words.needed}>
                  {amount(line.unit, line.needed)}
                </td>
                <td role="cell" data-label={words.onHand}>
                  {amount(line.unit, line.onHand)}
                </td>
                <td role="cell" data-label={words.buy}>
                  {line.toBuy === 0 ? (
                    <span className="soft">{words.enough}</span>
                  ) : (
                    <>
                      <strong>{amount(line.unit, line.toBuy)}</strong>
                      {line.packs.map((pack) => (
                        <span key={pack.size} className="soft small run-pack">
                          {words.pack(pack.count, amount(line.unit, pack.size))}
                        </span>
                      ))}
                      {line.price !== undefined && (
                        <span className="soft small run-pack">{money(line.price, gather.currency)}</span>
                      )}
                    </>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
