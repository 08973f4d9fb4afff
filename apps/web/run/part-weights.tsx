import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { PartAmounts } from './use-sheet.js';
import { weighGroups, type WeighGroup } from './weigh-lines.js';
import { Sentence } from '../look/sentence.js';

/** What to weigh for a part, with each caution where the act is. */
export function PartWeights({
  part,
  boxes = false,
}: {
  readonly part: PartAmounts;
  readonly boxes?: boolean;
}): ReactNode {
  const { sheet } = useWords().run;
  const { mass, temperature, percent } = useAmounts();
  const { titled } = useTexts();
  const { batch, told, cautions } = part;
  const lye = cautions.filter(({ code }) => code === 'caution.lye');
  const others = cautions.filter(({ code }) => code !== 'caution.lye');
  const mind = others.map((caution) => (
    <p key={caution.code} className="note amber small">
      <Sentence of={caution} />
    </p>
  ));
  return (
    <>
      {batch === undefined && mind}
      {weighGroups(part, sheet, titled).map((group) => (
        <Group key={group.kind} group={group} boxes={boxes} cautions={group.kind === 'lye' ? lye : []} />
      ))}
      {part.massG !== undefined && part.kind === 'melt-and-pour' && (
        <p>
          {sheet.base}: <strong className="numbers">{mass(part.massG)}</strong>
        </p>
      )}
      {part.pieces !== undefined && <p>{sheet.decor(part.pieces)}</p>}
      {batch !== undefined && (
        <p className="small">
          {sheet.total} <strong className="numbers">{mass(batch.batchG)}</strong>
          {told !== undefined && <> · {sheet.batterAt(temperature(told.batterTemperatureC))}</>} ·{' '}
          {sheet.facts(
            percent(Math.round(batch.water.lyeConcentrationPercent * 10) / 10),
            sheet.superfat(
              ...([batch.superfat.used, batch.superfat.low, batch.superfat.high].map((value) =>
                percent(Math.round(value * 10) / 10),
              ) as [string, string, string]),
            ),
          )}
        </p>
      )}
      {batch !== undefined && mind}
    </>
  );
}

function Group({
  group,
  boxes,
  cautions,
}: {
  readonly group: WeighGroup;
  readonly boxes: boolean;
  readonly cautions: PartAmounts['cautions'];
}): ReactNode {
  const { sheet } = useWords().run;
  const { mass } = useAmounts();
  const name = { fats: sheet.fats, lye: sheet.lye, batter: sheet.withBatter }[group.kind];
  return (
    <section className="run-weigh">
      <h4>{name}</h4>
      {cautions.map((caution) => (
        <p key={caution.code} className="note coral small">
          <Sentence of={caution} />
        </p>
      ))}
      <ul>
        {group.lines.map(({ title, massG, carrier }) => (
          <li key={title}>
            {boxes && <span className="run-box" aria-hidden />}
            <span>
              {title}
              {carrier !== undefined && (
                <span className="soft small">
                  {' '}
                  {sheet.carrier(mass(carrier.massG), sheet.carriers[carrier.kind])}
                </span>
              )}
            </span>
            <strong className="numbers">{mass(massG)}</strong>
          </li>
        ))}
        {group.totalG !== undefined && (
          <li className="soft">
            <span>{sheet.total}</span>
            <span className="numbers">{mass(group.totalG)}</span>
          </li>
        )}
      </ul>
    </section>
  );
}
