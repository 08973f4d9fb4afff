import type { ReactNode } from 'react';
import { wholeDegrees } from '#words';
import type { Schemas } from '../../api/client.js';
import { lensPath } from '../../look/lens.js';
import { Sign } from '../../look/sign.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';

/** What is what in the picture of a part's heat; only what is in it. */
export function HeatLegend({ heat }: { readonly heat: Schemas['PartHeat'] }): ReactNode {
  const { legend } = useWords().heat;
  const texts = useTexts();
  return (
    <figcaption className="legend row small soft">
      <Sign text={legend.middle}>
        <path className="middle" d="M1 8H23" />
      </Sign>
      <Sign text={legend.edge}>
        <path className="edge" d="M1 8H23" />
      </Sign>
      {heat.hottestMin > 0 && (
        <Sign text={legend.hottest}>
          <path className="lens" transform="matrix(0 1 1 0 0 0)" d={lensPath(1, 8, 15, 12, 7)} />
        </Sign>
      )}
      {!heat.isMade && (
        <Sign text={legend.gel(wholeDegrees(heat.gelC, texts))}>
          <path className="gel" d="M1 8H23" />
        </Sign>
      )}
      <Sign
        text={legend.around[heat.kept === 'chilled' ? 'chilled' : 'room'](wholeDegrees(heat.aroundC, texts))}
      >
        <path className="around" d="M1 8H23" />
      </Sign>
    </figcaption>
  );
}
