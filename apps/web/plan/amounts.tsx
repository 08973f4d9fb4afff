import type { ReactNode } from 'react';
import type { PlanDocument } from '#contract';
import { useAmounts } from '../look/amounts.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import { risksOf } from './plan-facts.js';

/** The headline of the batch sheet: what each part takes, and what may go wrong with it. */
export function Amounts({ plan }: { readonly plan: PlanDocument }): ReactNode {
  const { plan: words } = useWords();
  const amounts = useAmounts();
  const texts = useTexts();
  const parts = plan.runs.flatMap((run) => run.amounts);
  const risks = risksOf(plan).filter(({ level }) => level !== 'low');
  if (parts.length === 0) return null;
  return (
    <section className="stack tight">
      <h3>{words.amounts}</h3>
      <ul className="amounts">
        {parts.map((part) => (
          <li key={part.part}>
            <span>{part.title}</span>
            <span className="numbers small">
              {part.batch === undefined
                ? part.massG === undefined
                  ? words.decor(part.pieces ?? part.count)
                  : amounts.mass(part.massG)
                : words.batch(
                    amounts.mass(part.batch.fatsG),
                    amounts.mass(part.batch.naohG + part.batch.kohG),
                    amounts.mass(part.batch.waterG),
                  )}
            </span>
            <span className="soft small numbers">
              {words.short(amounts.share(part.cover.shortageChance))}
            </span>
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
