import { Scale } from 'lucide-react';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import type { SheetWeigh } from '../../run/sheet-sittings.js';
import { useWords } from '../../words/words.js';
import type { BenchStage } from '../bench-view.js';
import { weighSearch } from './weigh-address.js';

/** The way to what is weighed for a stage; nothing where nothing is. */
export function WeighLink({
  bench: { runId, stage },
  weigh,
}: {
  readonly bench: Pick<BenchStage, 'runId' | 'stage'>;
  readonly weigh: readonly SheetWeigh[];
}): ReactNode {
  const { now } = useWords();
  if (weigh.length === 0) return null;
  return (
    <Link
      className="button weigh-link"
      aria-label={now.about(now.weigh.open, stage.title)}
      to={{ search: weighSearch(runId, stage) }}
    >
      <Scale size={20} aria-hidden /> {now.weigh.open}
    </Link>
  );
}
