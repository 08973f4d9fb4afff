import { useState, type ReactNode } from 'react';
import type { Fat } from '#contract';
import { PastedLine } from './pasted-line.js';
import type { ReadRecipeText } from './read-pasted.js';
import { usePastingWords } from './pasting-words.js';

/** Characters that are read; longer texts are cut by the field already. */
const LONGEST = 20_000;

/** A box to paste a recipe into: its fats, once read, and what became of each of its lines. */
export function PasteRecipe({
  own,
  titleOf,
  onTake,
}: {
  readonly own: readonly Fat[];
  readonly titleOf: (key: string) => string;
  readonly onTake: (read: ReadRecipeText) => void;
}): ReactNode {
  const pasting = usePastingWords();
  const [text, setText] = useState('');
  const [chosen, setChosen] = useState<ReadonlyMap<number, string>>(new Map());
  const [found, setFound] = useState<ReadRecipeText | null>(null);
  const [isOpen, setOpen] = useState(false);
  const read = async (choice: ReadonlyMap<number, string>): Promise<void> => {
    const { readPasted } = await import('./read-pasted.js');
    setChosen(choice);
    setFound(readPasted(text, own, choice));
  };
  return (
    <details className="more" open={isOpen} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{pasting.title}</summary>
      <div className="stack">
        <div className="field">
          <label htmlFor="pasted">{pasting.text}</label>
          <textarea
            id="pasted"
            rows={6}
            value={text}
            maxLength={LONGEST}
            placeholder={pasting.example}
            spellCheck={false}
            aria-describedby="pasted-hint"
            onChange={({ target }) => {
              setText(target.value);
              setFound(null);
            }}
          />
          <p id="pasted-hint" className="soft small">
            {pasting.hint}
          </p>
        </div>
        <p>
          <button
            type="button"
            className="button"
            disabled={text.trim() === ''}
            onClick={() => void read(new Map())}
          >
            {pasting.read}
          </button>
        </p>
        <p role="status">{found !== null && <Summary found={found} />}</p>
        {found !== null && (
          <>
            <ol className="pasted" aria-label={pasting.lines}>
              {found.lines.map((each) => (
                <PastedLine
                  key={each.line}
                  read={each}
                  titleOf={titleOf}
                  onChoose={(fat) => void read(new Map([...chosen, [each.line, fat]]))}
                />
              ))}
            </ol>
            {found.isCut && <p className="note small">{pasting.cut}</p>}
            {found.fats.length > 0 && (
              <div className="stack tight">
                <p>
                  <button
                    type="button"
                    className="button main"
                    onClick={() => {
                      onTake(found);
                      setText('');
                      setFound(null);
                      setOpen(false);
                    }}
                  >
                    {pasting.use(found.fats.length, found.liquids.length + found.additions.length)}
                  </button>
                </p>
                <p className="soft small">{pasting.replaces}</p>
              </div>
            )}
          </>
        )}
      </div>
    </details>
  );
}

function Summary({ found: { fats, lines } }: { readonly found: ReadRecipeText }): ReactNode {
  const pasting = usePastingWords();
  if (fats.length === 0) return pasting.none;
  const look = lines.filter(
    ({ outcome }) =>
      outcome.kind !== 'not-a-fat' &&
      outcome.kind !== 'liquid' &&
      outcome.kind !== 'addition' &&
      (outcome.kind !== 'fat' || outcome.doubts.length > 0),
  );
  return pasting.found(fats.length, look.length);
}
