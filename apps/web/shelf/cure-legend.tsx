import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { lensPath } from '../look/lens.js';
import { Sign } from '../look/sign.js';
import { useWords } from '../words/words.js';

/** What is what in the picture of a cure; only what is in it. */
export function CureLegend({ cure }: { readonly cure: Schemas['CureCurve'] }): ReactNode {
  const { legend } = useWords().shelf;
  const hasCurve = cure.curve.length > 0;
  return (
    <figcaption className="legend row small soft">
      <Sign text={legend.weighed}>
        <circle className="weighed" cx="12" cy="8" r="5" />
      </Sign>
      {cure.readings.some(({ counts }) => !counts) && (
        <Sign text={legend.leftOut}>
          <circle className="left-out" cx="12" cy="8" r="5" />
        </Sign>
      )}
      {hasCurve && (
        <Sign text={legend.expected}>
          <path className="course" d="M1 8H23" />
        </Sign>
      )}
      {hasCurve && (
        <Sign text={legend.band}>
          <rect className="band" x="1" y="2" width="22" height="12" />
        </Sign>
      )}
      <Sign text={legend.ready}>
        <path className="lens" d={lensPath(1, 12, 23, 8, 7)} />
      </Sign>
    </figcaption>
  );
}
