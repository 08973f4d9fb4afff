import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { Failed } from '../shell/states.js';
import { useAge } from '../stock/leftovers.js';
import { useStockWords } from '../stock/stock-words.js';
import { useStock, useWriteStock } from '../stock/use-stock.js';
import type { BatchSheet } from './use-sheet.js';

/** Leftover dough that decor of this run can be pressed from, where there is not enough of its material. */
export default function LeftoverOffers({
  lines,
  run,
}: {
  readonly lines: BatchSheet['gather']['lines'];
  /** Key of the run. */
  readonly run: string;
}): ReactNode {
  const words = useStockWords();
  const { mass } = useAmounts();
  const age = useAge();
  const { data } = useStock();
  const write = useWriteStock();
  const short = lines.find(({ kind, unit, toBuy }) => kind === 'decor' && unit === 'g' && toBuy > 0);
  const dough = data?.leftovers.filter(({ form }) => form === 'dough') ?? [];
  if (short === undefined || dough.length === 0) return null;
  return (
    <section className="card stack tight" aria-labelledby="offers">
      <h3 id="offers">{words.offer}</h3>
      <p className="small">{words.shortOf(short.title, mass(short.toBuy))}</p>
      {write.error !== null && <Failed error={write.error} again={() => write.reset()} />}
      <ul className="run-list">
        {dough.map((leftover) => {
          // As it is weighed: tenths of a gram.
          const massG = Math.min(leftover.massG, Math.ceil(short.toBuy * 10) / 10);
          return (
            <li key={leftover.id} className="stack tight">
              <span>{words.offered(leftover.title, mass(leftover.massG), age(leftover))}</span>
              <span>
                <button
                  type="button"
                  className="button"
                  aria-label={words.takeOf(mass(massG), leftover.title)}
                  disabled={write.isPending}
                  onClick={() =>
                    write.mutate({
                      kind: 'leftover-used',
                      leftover: leftover.id,
                      massG,
                      material: short.key,
                      run,
                    })
                  }
                >
                  {words.take(mass(massG))}
                </button>
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
