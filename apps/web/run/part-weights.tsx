import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { Sentence } from '../look/sentence.js';
import { useWords } from '../words/words.js';
import { BatchWeights } from './batch-weights.js';
import type { BatchToMix, PartAmounts } from './use-sheet.js';
import type { WeighGroup } from './weigh-lines.js';

/**
 * What to weigh for a part, with each caution where the act is.
 * @param own its batch, where that is for this part alone
 * @param from what the batch is called that it shares
 * @param kinds what of its batch is weighed here; absent: all of it
 * @param above codes of cautions that stand above already
 */
export function PartWeights({
  part,
  own,
  from,
  boxes = false,
  kinds,
  above = new Set(),
}: {
  readonly part: PartAmounts;
  readonly own: BatchToMix | undefined;
  readonly from: string | undefined;
  readonly boxes?: boolean;
  readonly kinds?: ReadonlySet<WeighGroup['kind']>;
  readonly above?: ReadonlySet<string>;
}): ReactNode {
  const { sheet } = useWords().run;
  const { mass } = useAmounts();
  if (kinds?.has('batter') === false)
    return (
      own !== undefined && <BatchWeights batch={own} coloured={part.batch} {...{ boxes, kinds, above }} />
    );
  return (
    <>
      {part.cautions
        .filter(({ code }) => !above.has(code))
        .map((caution) => (
          <p key={caution.code} className="note amber small">
            <Sentence of={caution} />
          </p>
        ))}
      {own !== undefined && <BatchWeights batch={own} coloured={part.batch} {...{ boxes, kinds, above }} />}
      {from !== undefined && part.batch !== undefined && (
        <p>{sheet.fromBatch(mass(part.batch.batchG), from)}</p>
      )}
      {part.massG !== undefined && part.kind === 'melt-and-pour' && (
        <p>
          {sheet.base}: <strong className="numbers">{mass(part.massG)}</strong>
        </p>
      )}
      {part.pieces !== undefined && <p>{sheet.decor(part.pieces)}</p>}
    </>
  );
}
