import type { ReactNode } from 'react';
import { curveRows } from '#clocks';
import { wholeDegrees } from '#words';
import type { Schemas } from '../../api/client.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';

type Heat = Schemas['PartHeat'];

/** The curve at a handful of times. */
export function CurveTable({ heat }: { readonly heat: Heat }): ReactNode {
  const words = useWords().heat;
  const texts = useTexts();
  const last = heat.curve.at(-1)?.min;
  return (
    <Folded title={words.table} columns={[words.columns.after, words.columns.middle, words.columns.edge]}>
      {curveRows(heat.curve, heat.hottestMin).map(({ min, middleC, edgeC }) => (
        <tr key={min}>
          <th scope="row">{texts.duration(min, last)}</th>
          <td>{wholeDegrees(middleC, texts)}</td>
          <td>{wholeDegrees(edgeC, texts)}</td>
        </tr>
      ))}
    </Folded>
  );
}

/** What it would do if its mould stood in another way. */
export function WaysTable({ heat }: { readonly heat: Heat }): ReactNode {
  const words = useWords().heat;
  const { odds } = useTexts();
  const { kept, whole, part, none, overheats } = words.wayColumns;
  return (
    <Folded title={words.ways} columns={[kept, whole, part, none, overheats]}>
      {heat.keptElse.map((way) => (
        <tr key={way.kept}>
          <th scope="row">
            {words.kept[way.kept]}
            {way.kept === heat.kept && ` ${words.asItIs}`}
          </th>
          {[way.whole, way.part, way.none, way.overheats].map((chance, i) => (
            <td key={columnKeys[i]}>{odds(chance)}</td>
          ))}
        </tr>
      ))}
    </Folded>
  );
}

const columnKeys = ['whole', 'part', 'none', 'overheats'] as const;

function Folded({
  title,
  columns,
  children,
}: {
  readonly title: string;
  readonly columns: readonly string[];
  readonly children: ReactNode;
}): ReactNode {
  return (
    <details>
      <summary>{title}</summary>
      <div className="scroll-x" tabIndex={0} role="region" aria-label={title}>
        <table className="numbers small">
          <thead>
            <tr>
              {columns.map((each) => (
                <th key={each} scope="col">
                  {each}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>{children}</tbody>
        </table>
      </div>
    </details>
  );
}
