import type { ReactNode } from 'react';
import type { PlanDocument } from '#contract';
import { useAmounts } from '../look/amounts.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import { risksOf } from './plan-facts.js';

type Run = PlanDocument['runs'][number];
type Part = Run['amounts'][number];
type Batch = NonNullable<Part['batch']>;

/** The headline of the batch sheet: what each part takes, and what may go wrong with it. */
export function Amounts({ plan }: { readonly plan: PlanDocument }): ReactNode {
  const { plan: words } = useWords();
  const amounts = useAmounts();
  const texts = useTexts();
  const weighed = ({ fatsG, naohG, kohG, waterG }: Batch): string =>
    [
      words.ofFatsMass(amounts.mass(fatsG)),
      ...(naohG > 0 ? [words.alkalis.naoh(amounts.mass(naohG))] : []),
      ...(kohG > 0 ? [words.alkalis.koh(amounts.mass(kohG))] : []),
      words.ofWater(amounts.mass(waterG)),
    ].join(', ');
  const parts = plan.runs.flatMap((run) => run.amounts);
  const shared = plan.runs.flatMap(({ batches = [] }) => batches.filter((each) => each.parts.length > 1));
  const taken = (part: Part): string => {
    if (part.batch === undefined) {
      return part.massG === undefined ? words.decor(part.pieces ?? part.count) : amounts.mass(part.massG);
    }
    const isShared = shared.some((each) => each.parts.includes(part.part));
    return isShared ? words.ofBatter(amounts.mass(part.batch.batchG)) : weighed(part.batch);
  };
  const risks = risksOf(plan).filter(({ level }) => level !== 'low');
  if (parts.length === 0) return null;
  return (
    <section className="stack tight">
      <h3>{words.amounts}</h3>
      <ul className="amounts">
        {shared.map((batch) => (
          <li key={`batch ${batch.parts.join(' ')}`}>
            <span>{batch.title}</span>
            <span className="numbers small">{weighed(batch.amounts)}</span>
          </li>
        ))}
        {parts.map((part) => (
          <li key={part.part}>
            <span>
              {part.title}
              {plan.runs.some(({ groups }) => groups !== undefined) && (
                <span className="soft"> {words.forPieces(part.count)}</span>
              )}
            </span>
            <span className="numbers small">{taken(part)}</span>
            <span className="soft small numbers">{words.short(texts.odds(part.cover.shortageChance))}</span>
          </li>
        ))}
      </ul>
      {risks.length > 0 && (
        <ul className="small">
          {risks.map((risk) => (
            <li key={JSON.stringify(risk)}>
              {texts.of(risk)} {texts.remedyOf(risk)}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
