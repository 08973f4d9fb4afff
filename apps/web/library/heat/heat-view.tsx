import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { Sentences } from '../../look/sentence.js';
import { HeatPicture } from './heat-picture.js';
import { CurveTable, WaysTable } from './heat-tables.js';
import './heat.css';

type Note = Schemas['PartHeat']['notes'][number];

/** From which chance of overheating on it is no longer only worth a look. */
const LIKELY = 0.5;
const advice: readonly Note['code'][] = ['heat.kept-else', 'heat.pour'];

/** What a poured part does by its own heat: in sentences, as a curve, and what would change it. */
export function HeatView({
  heat,
  title,
}: {
  readonly heat: Schemas['PartHeat'];
  /** Of the part, for who cannot see the picture. */
  readonly title: string;
}): ReactNode {
  const overheats = heat.notes.find(({ code }) => code === 'heat.overheats');
  const others = heat.notes.filter((note) => note !== overheats);
  const [told, advised] = [
    others.filter(({ code }) => !advice.includes(code)),
    others.filter(({ code }) => advice.includes(code)),
  ];
  return (
    <div className="heat stack tight">
      <p>
        <Sentences of={told} />
      </p>
      {overheats !== undefined && (
        <p className={`note ${heat.overheats >= LIKELY ? 'coral' : 'amber'} small`}>
          <Sentences of={[overheats]} />
        </p>
      )}
      {advised.length > 0 && (
        <p className="note small">
          <Sentences of={advised} />
        </p>
      )}
      <HeatPicture heat={heat} title={title} />
      <CurveTable heat={heat} />
      {heat.keptElse.length > 0 && <WaysTable heat={heat} />}
    </div>
  );
}
