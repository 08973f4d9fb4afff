import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { Failed } from '../shell/states.js';
import { useAge } from './leftovers.js';
import { useStockWords } from './stock-words.js';
import { useStock, useWriteStock, type Leftover } from './use-stock.js';
import type { Schemas } from '../api/client.js';

/** Leftover dough that decor can be pressed from, where there is not enough of its material. */
export default function LeftoverOffers({
  lines,
  run,
}: {
  readonly lines: Schemas['GatherList']['lines'];
  /** Key of the run that it is for; absent: of several. */
  readonly run?: string;
}): ReactNode {
  const words = useStockWords();
  const { data } = useStock();
  const short = lines.filter(({ kind, unit, toBuy }) => kind === 'decor' && unit === 'g' && toBuy > 0);
  const dough = data?.leftovers.filter(({ form }) => form === 'dough') ?? [];
  if (short.length === 0 || dough.length === 0) return null;
  return (
    <section className="card stack tight" aria-labelledby="offers">
      <h3 id="offers">{words.offer}</h3>
      {short.map((line) => (
        <Offers key={line.key} line={line} dough={dough} run={run} />
      ))}
    </section>
  );
}

function Offers({
  line: { key: material, title, toBuy },
  dough,
  run,
}: {
  readonly line: Schemas['GatherList']['lines'][number];
  readonly dough: readonly Leftover[];
  readonly run: string | undefined;
}): ReactNode {
  const words = useStockWords();
  const { mass } = useAmounts();
  const age = useAge();
  const write = useWriteStock();
  return (
    <>
      <p className="small">{words.shortOf(title, mass(toBuy))}</p>
      {write.error !== null && <Failed error={write.error} again={() => write.reset()} />}
      <ul className="run-list">
        {dough.map((leftover) => {
          // As it is weighed: tenths of a gram.
          const massG = Math.min(leftover.massG, Math.ceil(toBuy * 10) / 10);
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
                      material,
                      ...(run !== undefined && { run }),
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
    </>
  );
}
