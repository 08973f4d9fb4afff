import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useWords } from '../../words/words.js';
import { HeatView } from './heat-view.js';

/** The heat of a batch on the page of its recipe. @param heat null while it is for no mould */
export function HeatCard({
  heat,
  title,
}: {
  readonly heat: Schemas['PartHeat'] | null;
  readonly title: string;
}): ReactNode {
  const { heat: words } = useWords();
  return (
    <section className="card stack" aria-labelledby="heat">
      <div className="stack tight">
        <h2 id="heat">{words.title}</h2>
        <p className="soft small">{heat === null ? words.needsMould : words.lead}</p>
      </div>
      {heat !== null && <HeatView heat={heat} title={title} />}
    </section>
  );
}
