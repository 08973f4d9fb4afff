import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { useTimes } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useAmountText } from './amount-text.js';
import { useStockWords } from './stock-words.js';
import type { KnownMaterial } from './use-choices.js';
import { useMoves, useWriteStock } from './use-stock.js';

/** So many are shown; the rest is long ago. */
const MOST = 100;

/** All that changed the stock of a material, the latest first; what was entered by hand can be taken back. */
export function Moves({
  material,
  currency,
}: {
  readonly material: KnownMaterial;
  readonly currency: string | undefined;
}): ReactNode {
  const words = useStockWords();
  const amount = useAmountText();
  const { money } = useAmounts();
  const { dayTime } = useTimes();
  const { data, error, refetch } = useMoves(material.key, material.unit);
  const write = useWriteStock();
  return (
    <section className="card stack tight" aria-labelledby="moves">
      <h2 id="moves">{words.moves}</h2>
      {data === undefined &&
        (error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />)}
      {data?.moves.length === 0 && <p className="soft">{words.noMoves}</p>}
      {write.error !== null && <Failed error={write.error} again={() => write.reset()} />}
      <ol className="things">
        {data?.moves.slice(0, MOST).map((move, i) => (
          <li key={`${move.at} ${move.entry ?? String(i)}`} className="row apart">
            <span>
              <strong>{words.kinds[move.kind]}:</strong>{' '}
              <span className="numbers">{amount(material.unit, Math.abs(move.amount))}</span>
              {move.price !== undefined && `, ${money(move.price, currency)}`}
              <span className="soft small stock-when">
                {dayTime(move.at)}
                {move.run !== undefined && ` · ${words.by(move.part ?? '', move.run.title)}`}
              </span>
            </span>
            {move.entry !== undefined && (
              <button
                type="button"
                className="button plain"
                aria-label={words.takeBackOf(words.kinds[move.kind], dayTime(move.at))}
                disabled={write.isPending}
                onClick={() => write.mutate({ kind: 'take-back', entry: move.entry ?? '' })}
              >
                {words.takeBack}
              </button>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
