import { useState, type ReactNode } from 'react';
import { fieldId, useForm } from '../../form/form-context.js';
import { listAt, textAt } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import type { DesignAround } from './design-around.js';
import { PartItem } from './part-item.js';
import { additions, withAddition, type Addition } from './patterns/additions.js';
import { usePieceTitles } from './patterns/use-piece-titles.js';

/** The parts of a piece, a line each; one of them is open at a time. */
export function PartsEditor({ around }: { readonly around: DesignAround }): ReactNode {
  const { library, patterns } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const parts = listAt(content, ['parts']);
  const [fresh, setFresh] = useState<string | null>(null);
  const add = (addition: Addition): void => {
    const next = withAddition(content, addition, titles);
    setFresh(textAt(listAt(next, ['parts']).at(-1), ['key']));
    change([], next);
  };
  return (
    <section className="card stack" aria-labelledby={fieldId(['parts'])}>
      <h2 id={fieldId(['parts'])} tabIndex={-1}>
        {library.parts}
      </h2>
      {parts.length === 0 && <p className="soft">{library.noParts}</p>}
      <ul className="strata">
        {parts.map((part, i) => {
          const key = textAt(part, ['key']);
          return (
            <li key={key} className={`edge-${String((i % 5) + 1)}`}>
              <PartItem index={i} around={around} isFresh={fresh === key} />
            </li>
          );
        })}
      </ul>
      <fieldset className="stack tight">
        <legend>{patterns.add}</legend>
        <div className="row">
          {additions.map((each) => (
            <button key={each} type="button" className="button" onClick={() => add(each)}>
              + {patterns.additions[each]}
            </button>
          ))}
        </div>
      </fieldset>
    </section>
  );
}
