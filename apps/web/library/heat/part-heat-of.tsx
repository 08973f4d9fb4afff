import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useWords } from '../../words/words.js';
import { HeatView } from './heat-view.js';

type PartClocks = Schemas['ClocksDocument']['runs'][number]['parts'];

/** The heat of a cast part; layers of one cavity that warm as one are told once. */
export function PartHeatOf({ part, all }: { readonly part: string; readonly all: PartClocks }): ReactNode {
  const { heat: words } = useWords();
  const own = all.find((each) => each.part === part);
  if (!own?.heat) return null;
  const same = all.find(({ heat }) => JSON.stringify(heat) === JSON.stringify(own.heat));
  if (same !== undefined && same !== own) return <p className="small soft">{words.sameAs(same.title)}</p>;
  return (
    <details className="more">
      <summary>{words.title}</summary>
      <HeatView heat={own.heat} title={own.title} />
    </details>
  );
}
