import type { ReactNode } from 'react';
import { useTexts } from '../look/use-texts.js';
import { useAmounts } from '../look/amounts.js';
import { useTimes } from '../look/times.js';
import { RefusalText } from '../offline/refusal-text.js';
import { Confirm } from '../shell/confirm.js';
import { useWords } from '../words/words.js';
import { useAmountText } from './amount-text.js';
import { dropLine, useWaitingLines, type StockEntry, type WaitingLine } from './stock-outbox.js';
import { useStockWords } from './stock-words.js';
import { useStock } from './use-stock.js';

/** What was entered while Benchtide was out of reach, and what it then would not take. */
export function WaitingLines(): ReactNode {
  const words = useStockWords();
  const lines = useWaitingLines();
  const [waiting, refused] = [false, true].map((isRefused) =>
    lines.filter(({ refusal }) => (refusal !== undefined) === isRefused),
  );
  if (lines.length === 0) return null;
  return (
    <section className="card stack tight" aria-labelledby="waiting">
      <h2 id="waiting">{words.waitingTitle}</h2>
      <Lines lines={waiting ?? []} lead={words.waitingLead} />
      <Lines lines={refused ?? []} lead={words.refusedLead} />
    </section>
  );
}

function Lines({
  lines,
  lead,
}: {
  readonly lines: readonly WaitingLine[];
  readonly lead: string;
}): ReactNode {
  const words = useStockWords();
  const { offline } = useWords();
  const { dayTime } = useTimes();
  const textOf = useEntryText();
  if (lines.length === 0) return null;
  return (
    <>
      <p className="small">{lead}</p>
      <ul className="things">
        {lines.map(({ id, entry, refusal }) => (
          <li key={id} className="stack tight">
            <span>
              {textOf(entry)} <span className="soft small">{dayTime(entry.at)}</span>
            </span>
            {refusal !== undefined && (
              <span className="note coral small">
                <RefusalText refusal={refusal} />
              </span>
            )}
            <Confirm
              label={words.drop}
              name={words.dropOf(textOf(entry))}
              ask={textOf(entry)}
              yes={offline.reallyDiscard}
              no={offline.keep}
              onYes={() => dropLine(id)}
            />
          </li>
        ))}
      </ul>
    </>
  );
}

/** A line of the ledger in short: what, how much. */
function useEntryText(): (entry: StockEntry) => string {
  const words = useStockWords();
  const { titled } = useTexts();
  const { mass } = useAmounts();
  const amount = useAmountText();
  const { data } = useStock();
  return (entry) => {
    switch (entry.kind) {
      case 'purchase':
      case 'count':
      case 'used':
      case 'written-off': {
        const { material, title, unit = 'g' } = entry;
        const known = data?.materials.find((line) => line.key === material && line.unit === unit);
        const what = titled(material, known?.title ?? title ?? material);
        return `${words.kinds[entry.kind]}: ${what}, ${amount(unit, Number(entry.amount))}`;
      }
      case 'leftover-kept':
        return `${words.keepTitle}: ${entry.title}, ${mass(Number(entry.massG))}`;
      case 'leftover-used':
      case 'leftover-written-off': {
        // It may be used up meanwhile, and its name gone with it.
        const title = data?.leftovers.find(({ id }) => id === entry.leftover)?.title;
        const what = entry.kind === 'leftover-used' ? words.use : words.throwOut;
        return `${title === undefined ? what : `${what}: ${title}`}, ${mass(Number(entry.massG))}`;
      }
      case 'take-back':
        return words.takeBack;
    }
  };
}
