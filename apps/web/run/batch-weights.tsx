import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { Sentence } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { BatchToMix, PartAmounts } from './use-sheet.js';
import { weighGroups, type WeighGroup, type WeighLine } from './weigh-lines.js';

/**
 * What to weigh for a batch, with each caution where the act is, and into what it is split.
 * @param coloured what one part takes of it, where it is all for that part and has one colour
 * @param parts titles of its parts, by key, where they are several
 * @param kinds what of it is weighed here; absent: all of it
 * @param above codes of cautions that stand above already
 */
export function BatchWeights({
  batch,
  coloured,
  parts = new Map(),
  boxes = false,
  kinds,
  above = new Set(),
}: {
  readonly batch: BatchToMix;
  readonly coloured?: PartAmounts['batch'];
  readonly parts?: ReadonlyMap<string, string>;
  readonly boxes?: boolean;
  readonly kinds?: ReadonlySet<WeighGroup['kind']> | undefined;
  readonly above?: ReadonlySet<string>;
}): ReactNode {
  const { sheet } = useWords().run;
  const { mass, temperature, percent } = useAmounts();
  const { titled } = useTexts();
  const isSplit = batch.portions.length > 1;
  const amounts = isSplit ? batch.amounts : (coloured ?? batch.amounts);
  const cautions = batch.cautions.filter(({ code }) => !above.has(code));
  const lye = cautions.filter(({ code }) => code === 'caution.lye');
  const others = cautions.filter(({ code }) => code !== 'caution.lye');
  const { used, low, high } = amounts.superfat;
  const shown = (value: number): string => percent(Math.round(value * 10) / 10);
  const isHere = (kind: WeighGroup['kind']): boolean => kinds?.has(kind) ?? true;
  const groups = weighGroups({ batch: amounts }, sheet, titled).filter(({ kind }) => isHere(kind));
  const list = (
    <>
      {groups.map((group) => (
        <Group key={group.kind} group={group} boxes={boxes} cautions={group.kind === 'lye' ? lye : []} />
      ))}
    </>
  );
  // What concerns the whole batch stands where it comes together.
  if (!isHere('batter')) return list;
  return (
    <>
      {list}
      <p className="small">
        {sheet.total} <strong className="numbers">{mass(amounts.batchG)}</strong> ·{' '}
        {sheet.batterAt(temperature(batch.told.batterTemperatureC))} ·{' '}
        {sheet.facts(
          shown(amounts.water.lyeConcentrationPercent),
          sheet.superfat(shown(used), shown(low), shown(high)),
        )}
      </p>
      {isSplit && <Split batch={batch} parts={parts} boxes={boxes} />}
      {others.map((caution) => (
        <p key={caution.code} className="note amber small">
          <Sentence of={caution} />
        </p>
      ))}
    </>
  );
}

/** What is taken off the batch before the colours, and what goes into each portion. */
function Split({
  batch,
  parts,
  boxes,
}: {
  readonly batch: BatchToMix;
  readonly parts: ReadonlyMap<string, string>;
  readonly boxes: boolean;
}): ReactNode {
  const { sheet } = useWords().run;
  const { mass, percent } = useAmounts();
  return (
    <section className="run-weigh">
      <h4>{sheet.splitInto}</h4>
      <ul>
        {batch.portions.map((portion) => {
          const of = portion.portion === undefined ? undefined : parts.get(portion.part);
          return (
            <li key={`${portion.part} ${portion.portion ?? ''}`} className="run-portion">
              <div>
                {boxes && <span className="run-box" aria-hidden />}
                <span>
                  {of === undefined ? portion.title : `${of}: ${portion.title}`}{' '}
                  <span className="soft small">{percent(Math.round(portion.sharePercent))}</span>
                </span>
                <strong className="numbers">{mass(portion.massG)}</strong>
              </div>
              {[...portion.colourants, ...portion.additions, ...portion.fragrances].map((line) => (
                <div key={line.key} className="run-colour">
                  <LineTitle line={line} />
                  <strong className="numbers">{mass(line.massG)}</strong>
                </div>
              ))}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function LineTitle({ line: { title, carrier } }: { readonly line: WeighLine }): ReactNode {
  const { sheet } = useWords().run;
  const { mass } = useAmounts();
  return (
    <span>
      {title}
      {carrier !== undefined && (
        <span className="soft small">
          {' '}
          {sheet.carrier(mass(carrier.massG), sheet.carriers[carrier.kind])}
        </span>
      )}
    </span>
  );
}

function Group({
  group,
  boxes,
  cautions,
}: {
  readonly group: WeighGroup;
  readonly boxes: boolean;
  readonly cautions: BatchToMix['cautions'];
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
        {group.lines.map((line) => (
          <li key={line.title}>
            {boxes && <span className="run-box" aria-hidden />}
            <LineTitle line={line} />
            <strong className="numbers">{mass(line.massG)}</strong>
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
