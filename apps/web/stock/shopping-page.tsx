import { useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { Link } from 'react-router';
import { liveRuns } from '../api/all-runs.js';
import { answered, api, type Schemas } from '../api/client.js';
import { useAmounts } from '../look/amounts.js';
import { Sentence } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { Failed, Loading } from '../shell/states.js';
import { useAmountText } from './amount-text.js';
import LeftoverOffers from './leftover-offers.js';
import { rounded } from './packs.js';
import { PurchaseForm } from './purchase-form.js';
import { useStockWords } from './stock-words.js';
import { useWriteStock } from './use-stock.js';
import { StockHead } from './stock-head.js';
import '../form/form.css';
import '../library/library.css';
import './stock.css';

type Line = Schemas['GatherList']['lines'][number];

/** What all planned runs still need together, less what is there; what is bought is entered on the spot. */
export default function ShoppingPage(): ReactNode {
  const words = useStockWords();
  const { data, error, refetch } = useQuery(liveRuns);
  return (
    <div className="stack">
      <StockHead
        back={{ to: '/makings/stock', text: words.toStock }}
        title={words.shopping}
        lead={words.shoppingLead}
      />
      {data === undefined ? (
        error === null ? (
          <Loading />
        ) : (
          <Failed error={error} again={() => void refetch()} />
        )
      ) : data.length === 0 ? (
        <p className="card">{words.noRuns}</p>
      ) : (
        <OfRuns runs={data} />
      )}
    </div>
  );
}

function OfRuns({ runs }: { readonly runs: readonly Schemas['StoredRun'][] }): ReactNode {
  const words = useStockWords();
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const ids = runs.map(({ id }) => id).filter((id) => !left.has(id));
  return (
    <>
      {runs.length > 1 && (
        <section className="card stack tight" role="group" aria-labelledby="for-runs">
          <h2 id="for-runs">{words.shoppingFor}</h2>
          {runs.map(({ id, order }) => (
            <div key={id} className="field check">
              <label className="tap">
                <input
                  type="checkbox"
                  checked={!left.has(id)}
                  onChange={({ target }) => {
                    const next = new Set(left);
                    if (target.checked) next.delete(id);
                    else next.add(id);
                    setLeft(next);
                  }}
                />
                <span>{order.title}</span>
              </label>
            </div>
          ))}
        </section>
      )}
      {ids.length === 0 ? <p>{words.chooseRuns}</p> : <Gathered ids={ids} />}
    </>
  );
}

function Gathered({ ids }: { readonly ids: readonly string[] }): ReactNode {
  const words = useStockWords();
  const amount = useAmountText();
  const { titled } = useTexts();
  const { money } = useAmounts();
  const runs = ids.join(',');
  const { data, error, refetch } = useQuery({
    queryKey: ['amounts', 'gather', runs],
    queryFn: () => answered(api.GET('/api/gather', { params: { query: { runs } } })),
    staleTime: 0,
  });
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  const toBuy = data.lines.filter((line) => line.toBuy > 0);
  const enough = data.lines.filter((line) => line.toBuy === 0);
  const unpriced = toBuy.filter(({ price }) => price === undefined).length;
  return (
    <>
      <section className="card stack tight" aria-labelledby="to-buy">
        <h2 id="to-buy">{words.shopping}</h2>
        {toBuy.length === 0 && <p>{words.nothingToBuy}</p>}
        <ul className="things stock-lines">
          {toBuy.map((line) => (
            <LineToBuy
              key={`${line.kind} ${line.unit} ${line.key} ${line.title}`}
              line={line}
              currency={data.currency}
            />
          ))}
        </ul>
        {data.price !== undefined && (
          <p>
            <strong>{words.together(money(data.price, data.currency))}</strong>{' '}
            {unpriced > 0 && <span className="soft">{words.withoutPrice(unpriced)}</span>}
          </p>
        )}
      </section>
      <LeftoverOffers lines={data.lines} />
      {enough.length > 0 && (
        <section className="card" aria-label={words.enough}>
          <details className="more">
            <summary>{words.enough}</summary>
            <ul>
              {enough.map(({ kind, unit, key, title, needed, onHand }) => (
                <li key={`${kind} ${unit} ${key} ${title}`}>
                  {titled(key, title)}
                  {': '}
                  <span className="soft">{words.needed(amount(unit, needed), amount(unit, onHand))}</span>
                </li>
              ))}
            </ul>
          </details>
        </section>
      )}
    </>
  );
}

/** One thing to buy, with a tap for who buys just what is listed and a form for who does not. */
function LineToBuy({
  line,
  currency,
}: {
  readonly line: Line;
  readonly currency: string | undefined;
}): ReactNode {
  const words = useStockWords();
  const amount = useAmountText();
  const { titled } = useTexts();
  const { money } = useAmounts();
  const write = useWriteStock();
  const { key, unit, needed, onHand, toBuy, packs, price, cautions } = line;
  const title = titled(key, line.title);
  const listed = packs.reduce((sum, { count, size }) => sum + count * size, 0);
  return (
    <li>
      <Link to={`/makings/stock/${unit}/${key}`}>{title}</Link>
      <strong className="numbers">{amount(unit, toBuy)}</strong>
      <div className="stack tight">
        {onHand > 0 && (
          <span className="soft small">{words.needed(amount(unit, needed), amount(unit, onHand))}</span>
        )}
        {packs.length > 0 && (
          <span className="small">
            {packs.map(({ count, size }) => words.packCount(count, amount(unit, size))).join(', ')}
            {price !== undefined && `, ${money(price, currency)}`}
          </span>
        )}
        {cautions.map((caution) => (
          <span key={caution.code} className="note amber small">
            <Sentence of={caution} />
          </span>
        ))}
        {write.error !== null && <Failed error={write.error} again={() => write.reset()} />}
        {write.data === 'waiting' && <span className="small">{words.keptHere}</span>}
        {packs.length > 0 ? (
          <span>
            <button
              type="button"
              className="button"
              aria-label={words.boughtItOf(title)}
              disabled={write.isPending || write.data === 'waiting'}
              onClick={() =>
                write.mutate({
                  ...{ kind: 'purchase', material: key, title: line.title, unit, amount: rounded(listed) },
                  ...(price !== undefined && { price: rounded(price) }),
                })
              }
            >
              {words.boughtIt}
            </button>
          </span>
        ) : (
          <details className="more">
            <summary aria-label={words.boughtItOf(title)}>{words.boughtIt}</summary>
            <PurchaseForm currency={currency ?? ''} of={{ key, title: line.title, unit }} />
          </details>
        )}
      </div>
    </li>
  );
}
