import { useState, type ReactNode } from 'react';
import { SelectField } from '../form/fields.js';
import { MeasureField } from '../form/number-field.js';
import { textAt, valueAt } from '../form/values.js';
import { useAmounts } from '../look/amounts.js';
import { useNow } from '../look/times.js';
import { useThings } from '../library/shelf-calls.js';
import { Failed } from '../shell/states.js';
import { EntryForm } from './entry-form.js';
import { useStockWords } from './stock-words.js';
import { useWriteStock, type EntryNow, type Leftover } from './use-stock.js';

const DAY_MS = 24 * 60 * 60_000;

/** Whole days since soap was made. */
export function useAge(): (leftover: Pick<Leftover, 'madeAt'>) => string {
  const words = useStockWords();
  const now = useNow(60 * 60_000);
  return ({ madeAt }) => words.ages(Math.max(0, Math.floor((now - Date.parse(madeAt)) / DAY_MS)));
}

/** Leftovers that are kept: how much, how old, where they can go, and what became of them. */
export function Leftovers({ leftovers }: { readonly leftovers: readonly Leftover[] }): ReactNode {
  const words = useStockWords();
  const [told, setTold] = useState('');
  return (
    <>
      {leftovers.length === 0 && <p className="soft">{words.noLeftovers}</p>}
      {leftovers.some(({ form }) => form === 'dough') && (
        <p className="note amber small">{words.doughKeeps}</p>
      )}
      <ul className="things">
        {leftovers.map((leftover) => (
          <li key={leftover.id} className="stack tight">
            <LeftoverItem leftover={leftover} onTold={setTold} />
          </li>
        ))}
      </ul>
      <p role="status">{told}</p>
    </>
  );
}

function LeftoverItem({
  leftover,
  onTold,
}: {
  readonly leftover: Leftover;
  readonly onTold: (text: string) => void;
}): ReactNode {
  const words = useStockWords();
  const { mass } = useAmounts();
  const age = useAge();
  const write = useWriteStock();
  const uses = useDesignUses(leftover);
  const { id, title, form, massG } = leftover;
  const choices = distinct(uses);
  const material = choices[0]?.value;
  return (
    <>
      <h3>{title}</h3>
      <p>
        <strong className="numbers">{mass(massG)}</strong> {words.forms[form]}, {age(leftover)}
        {leftover.recipe !== undefined && <span className="soft"> · {leftover.recipe}</span>}
      </p>
      {uses.length > 0 && (
        <p className="small">
          {words.canGo(uses.map(({ design, part }) => `${part} (${design})`).join(', '))}
        </p>
      )}
      <details className="more">
        <summary>{words.use}</summary>
        <EntryForm
          label={`${words.use}: ${title}`}
          blank={{ [`use-${id}`]: massG, ...(material !== undefined && { [`for-${id}`]: material }) }}
          entryOf={(content) => {
            const chosen = textAt(content, [`for-${id}`]);
            return {
              kind: 'leftover-used',
              leftover: id,
              massG: valueAt(content, [`use-${id}`]),
              ...(chosen !== '' && { material: chosen }),
            } as unknown as EntryNow;
          }}
          fieldOf={(name) => (name === 'massG' ? `use-${id}` : name === 'material' ? `for-${id}` : name)}
          said={(entry) => {
            const text = entry.kind === 'leftover-used' ? words.used(mass(Number(entry.massG)), title) : '';
            onTold(text);
            return text;
          }}
          button={words.enter}
        >
          {() => (
            <div className="fields">
              <MeasureField path={[`use-${id}`]} label={words.amount} dimension="mass" />
              {choices.length > 0 && (
                <SelectField
                  path={[`for-${id}`]}
                  label={words.useFor}
                  none={words.nothingCounted}
                  choices={choices}
                />
              )}
            </div>
          )}
        </EntryForm>
      </details>
      {write.error !== null && <Failed error={write.error} again={() => write.reset()} />}
      <p>
        <button
          type="button"
          className="button plain"
          disabled={write.isPending}
          aria-label={`${words.throwOut}: ${title}`}
          onClick={() =>
            write.mutate(
              { kind: 'leftover-written-off', leftover: id, massG },
              { onSuccess: (became) => onTold(became === 'waiting' ? words.keptHere : words.thrown(title)) },
            )
          }
        >
          {words.throwOut}
        </button>
      </p>
    </>
  );
}

interface DesignUse {
  readonly design: string;
  readonly part: string;
  /** What the part is pressed from; the leftover becomes that. Absent: it is melted again. */
  readonly material?: string;
}

/**
 * Designs that something of a leftover can go into: decor that is pressed from a material that is weighed, which only dough
 * can be, and parts of soap that is melted again.
 */
function useDesignUses({ form }: Pick<Leftover, 'form'>): DesignUse[] {
  const { data: designs = [] } = useThings('designs');
  return designs.flatMap(({ content: { title: design, parts, stages } }) =>
    parts.flatMap((part): DesignUse[] => {
      const isPressed = part.kind === 'decor' && part.material !== undefined && part.eachG !== undefined;
      if (isPressed && form === 'dough') return [{ design, part: part.title, material: part.material }];
      const isMelted = stages.some((stage) => stage.kind === 'rebatch' && stage.part === part.key);
      return isMelted ? [{ design, part: part.title }] : [];
    }),
  );
}

/** One choice for each material, named after what is pressed from it. */
function distinct(uses: readonly DesignUse[]): { readonly value: string; readonly text: string }[] {
  const parts = new Map<string, string[]>();
  for (const { material, part } of uses) {
    if (material !== undefined) parts.set(material, [...(parts.get(material) ?? []), part]);
  }
  return [...parts].map(([value, titles]) => ({ value, text: [...new Set(titles)].join(', ') }));
}
