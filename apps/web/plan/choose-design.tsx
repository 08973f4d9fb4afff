import type { ReactNode } from 'react';
import type { Mould, PieceDesign } from '#contract';
import { useWords } from '../words/words.js';
import { mostPieces } from './fillable.js';

/** The designs there are, as cards of which one is chosen. */
export function ChooseDesign({
  designs,
  moulds,
  chosen,
  onChoose,
}: {
  readonly designs: readonly PieceDesign[];
  readonly moulds: readonly Mould[];
  readonly chosen: string | null;
  readonly onChoose: (key: string) => void;
}): ReactNode {
  const { plan } = useWords();
  return (
    <fieldset className="design-cards">
      <legend>{plan.whichDesign}</legend>
      {designs.map((design) => (
        <label key={design.key} className="card design-card">
          <input
            type="radio"
            name="design"
            value={design.key}
            checked={design.key === chosen}
            onChange={() => onChoose(design.key)}
          />
          <span className="stack tight">
            <strong>{design.title}</strong>
            <span className="soft small">{design.parts.map(({ title }) => title).join(' · ')}</span>
            <span className="small">{plan.upTo(mostPieces(design, moulds))}</span>
            {design.looksEdible && <span className="small edible">{plan.looksEdible}</span>}
          </span>
        </label>
      ))}
    </fieldset>
  );
}
