import { Check, TriangleAlert } from 'lucide-react';
import type { ReactNode } from 'react';
import type { Mould, PieceDesign, RunGroup } from '#contract';
import { useWords } from '../words/words.js';
import { fillingsOf } from './fillable.js';

/** Whether there are cavities enough, mould by mould. */
export function MouldsCheck({
  design,
  moulds,
  count,
  groups,
}: {
  readonly design: PieceDesign;
  readonly moulds: readonly Mould[];
  readonly count: number;
  /** Absent: all pieces are alike. */
  readonly groups: readonly RunGroup[] | undefined;
}): ReactNode {
  const { plan } = useWords();
  const fillings = fillingsOf(design, moulds, count, groups);
  if (fillings.length === 0) return <p className="soft small">{plan.noMould}</p>;
  return (
    <ul className="checks small">
      {fillings.map(({ mould, title, needed, owned }) => (
        <li key={mould} className={needed > owned ? 'lacking' : undefined}>
          {needed > owned ? <TriangleAlert size={18} aria-hidden /> : <Check size={18} aria-hidden />}
          <span>
            {needed > owned ? plan.tooFew(title, needed, owned) : plan.enough(title, needed, owned)}
          </span>
        </li>
      ))}
    </ul>
  );
}
