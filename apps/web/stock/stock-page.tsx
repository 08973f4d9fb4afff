import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { useTexts } from '../look/use-texts.js';
import { useAmounts } from '../look/amounts.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { useAmountText } from './amount-text.js';
import { Leftovers } from './leftovers.js';
import { PurchaseForm } from './purchase-form.js';
import { useStockWords } from './stock-words.js';
import { useStock, type StockLine } from './use-stock.js';
import { StockHead } from './stock-head.js';
import '../form/form.css';
import '../library/library.css';
import './stock.css';

/** What is there of everything, what was bought, and the leftovers that are kept. */
export default function StockPage(): ReactNode {
  const words = useStockWords();
  const { library } = useWords();
  const { data, error, refetch } = useStock();
  return (
    <div className="stack">
      <StockHead back={{ to: '/makings', text: library.back }} title={words.title} lead={words.lead}>
        <p>
          <Link className="button" to="/makings/stock/to-buy">
            {words.shopping}
          </Link>
        </p>
      </StockHead>
      {data === undefined ? (
        error === null ? (
          <Loading />
        ) : (
          <Failed error={error} again={() => void refetch()} />
        )
      ) : (
        <>
          <section className="card stack tight" aria-labelledby="buy">
            <h2 id="buy">{words.buy}</h2>
            <PurchaseForm currency={data.currency ?? ''} />
          </section>
          <section className="card stack tight" aria-labelledby="materials">
            <h2 id="materials">{words.materials}</h2>
            {data.unsized.length > 0 && (
              <p className="note amber small">{words.unsized(data.unsized.join(', '))}</p>
            )}
            <Materials lines={data.materials} currency={data.currency} />
          </section>
          <section className="card stack tight" aria-labelledby="leftovers">
            <h2 id="leftovers">{words.leftovers}</h2>
            <Leftovers leftovers={data.leftovers} />
          </section>
        </>
      )}
    </div>
  );
}

function Materials({
  lines,
  currency,
}: {
  readonly lines: readonly StockLine[];
  readonly currency: string | undefined;
}): ReactNode {
  const words = useStockWords();
  const amount = useAmountText();
  const { language, titled } = useTexts();
  const { money } = useAmounts();
  if (lines.length === 0) return <p className="soft">{words.none}</p>;
  const named = lines.map((line) => ({ ...line, title: titled(line.key, line.title) }));
  return (
    <ul className="things stock-lines">
      {named
        .sort((a, b) => a.title.localeCompare(b.title, language))
        .map((line) => (
          <li key={`${line.unit} ${line.key}`}>
            <Link to={`/makings/stock/${line.unit}/${line.key}`}>{line.title}</Link>
            <strong className="numbers">
              {isKnown(line) ? amount(line.unit, line.onHand) : words.notCounted}
            </strong>
            {line.paid !== undefined && (
              <span className="soft small">
                {words.paid(money(line.paid.price, currency), amount(line.unit, line.paid.amount))}
              </span>
            )}
            {isKnown(line) && line.missing !== undefined && (
              <span className="note amber small">{words.missing(amount(line.unit, line.missing))}</span>
            )}
          </li>
        ))}
    </ul>
  );
}

/** Whether anything was ever entered of it; what runs used of the rest says nothing about what is there. */
export function isKnown({ from, bought, fromLeftovers }: StockLine): boolean {
  return from !== undefined || bought > 0 || fromLeftovers > 0;
}
