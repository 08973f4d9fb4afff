import { CircleCheck, TriangleAlert } from 'lucide-react';
import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useTexts } from '../../look/use-texts.js';
import { useTimes } from '../../look/times.js';
import { useWords } from '../../words/words.js';

/** Below this chance the answer is no longer a plain yes; as in the plan. */
const SURE = 0.9;

/** Whether all cavities can be filled before the batter is too thick. */
export function FillCheck({
  filling,
  count,
}: {
  readonly filling: Schemas['FillingTime'];
  readonly count: number;
}): ReactNode {
  const { library } = useWords();
  const { odds } = useTexts();
  const { length } = useTimes();
  const isSure = filling.chance >= SURE;
  const Icon = isSure ? CircleCheck : TriangleAlert;
  return (
    <div className={isSure ? 'note' : 'note amber'}>
      <h3 className="row">
        <Icon size={20} aria-hidden /> {library.fill}
      </h3>
      <p className="small">
        {library.fillAnswer(
          count,
          length(filling.neededMin),
          length(filling.stretchMin.likely),
          odds(filling.chance),
        )}{' '}
        {!isSure && filling.batches > 1 && filling.batches < count && library.fillSplit(filling.batches)}
      </p>
    </div>
  );
}
