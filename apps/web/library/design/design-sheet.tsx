import { useState, type ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { FormContext } from '../../form/form-context.js';
import { NumberField } from '../../form/number-field.js';
import { listAt, withValue, type Value } from '../../form/values.js';
import { useAmounts } from '../../look/amounts.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import type { Around } from '../checks.js';
import { FillCheck } from '../recipe/fill-check.js';
import { PartHeatOf } from '../heat/part-heat-of.js';
import { Risks } from '../recipe/risks.js';
import { isUnready, usePreviewOf } from '../recipe/use-preview.js';
import { designFile } from './design-file.js';

const USUAL_COUNT = 12;

/** What the design comes to for some pieces: the size of each batch, and how likely it is to run short. */
export function DesignSheet({
  design,
  around,
}: {
  readonly design: Value;
  readonly around: Around;
}): ReactNode {
  const { library } = useWords();
  const [wish, setWish] = useState<Value>({ count: USUAL_COUNT });
  const hasParts = listAt(design, ['parts']).length > 0;
  const preview = usePreviewOf(hasParts ? designFile(design, wish, around) : null);
  const amounts = preview.amounts?.runs[0]?.amounts ?? [];
  const clocks = preview.clocks?.runs[0]?.parts ?? [];
  if (!hasParts) return null;
  return (
    <section className="card stack" aria-labelledby="design-sheet">
      <h2 id="design-sheet">{library.enough}</h2>
      <FormContext
        value={{ content: wish, change: (path, value) => setWish(withValue(wish, path, value)), issues: [] }}
      >
        <div className="fields narrow" onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}>
          <NumberField path={['count']} label={library.pieces} />
        </div>
      </FormContext>
      {preview.error !== null && (
        <p className="note amber" role="status">
          {isUnready(preview.error)
            ? amounts.length === 0
              ? library.waits
              : library.older
            : library.noAnswer}
        </p>
      )}
      <ul className={preview.error === null ? 'rows sheet' : 'rows sheet old'}>
        {amounts.map((part) => (
          <li key={part.part} className="stack tight">
            <PartLine part={part} />
            <Filling filling={clocks.find((each) => each.part === part.part)?.filling} count={part.count} />
            <PartHeatOf part={part.part} all={clocks} />
            <Risks risks={part.risks.filter(({ level }) => level !== 'low')} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function PartLine({ part }: { readonly part: Schemas['PartAmounts'] }): ReactNode {
  const { library } = useWords();
  const { mass, number } = useAmounts();
  const { odds } = useTexts();
  const { cover, batch, massG, pieces } = part;
  const amount =
    batch !== undefined
      ? mass(batch.batchG)
      : pieces !== undefined
        ? library.piecesOf(pieces)
        : massG === undefined
          ? ''
          : mass(massG);
  const show = (value: number): string => (cover.unit === 'g' ? mass(value) : number(value, 0));
  return (
    <>
      <p className="row apart">
        <strong>{part.title}</strong>
        <strong className="numbers">{amount}</strong>
      </p>
      <p className="small soft">
        {library.short(odds(cover.shortageChance))}{' '}
        {library.left(show(cover.leftover.likely), show(cover.leftover.low), show(cover.leftover.high))}
      </p>
    </>
  );
}

function Filling({
  filling,
  count,
}: {
  readonly filling: Schemas['FillingTime'] | null | undefined;
  readonly count: number;
}): ReactNode {
  return filling ? <FillCheck filling={filling} count={count} /> : null;
}
