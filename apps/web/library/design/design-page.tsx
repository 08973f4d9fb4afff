import { useEffect, type ReactNode } from 'react';
import { Link, useSearchParams } from 'react-router';
import { CheckField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { listAt, valueAt } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { ThingEditor } from '../thing-editor.js';
import { ThingPage } from '../thing-page.js';
import { DesignSheet } from './design-sheet.js';
import { madeIn } from './made-for-piece.js';
import { PartsEditor } from './parts-editor.js';
import { ChoosePattern } from './patterns/choose-pattern.js';
import { StagesEditor } from './stages-editor.js';
import './design.css';

const blank = { parts: [], stages: [], links: [], waits: [] };

/** One design: what a piece is built from, and the stages that build it. */
export default function DesignPage(): ReactNode {
  const { library } = useWords();
  return (
    <ThingPage kind="designs" blank={blank}>
      {({ thing, ...opened }) => (
        <ThingEditor key={thing?.id ?? 'new'} kind="designs" thing={thing} {...opened}>
          {(draft) => (
            <>
              <div className="row apart">
                <TextField path={['title']} label={library.name} />
                {thing !== null && (
                  <Link className="button plain" to={`/makings/designs/new?like=${thing.id}`}>
                    {library.copy}
                  </Link>
                )}
              </div>
              {thing === null && (
                <p className="small">
                  <Link to="/guide">{library.guide}</Link> {library.guideHow}
                </p>
              )}
              <TakenIn />
              {listAt(draft.content, ['parts']).length === 0 && <ChoosePattern around={opened.around} />}
              <PartsEditor around={opened.around} />
              <StagesEditor around={opened.around} />
              <Likeness />
              <DesignSheet design={draft.content} around={opened.around} />
            </>
          )}
        </ThingEditor>
      )}
    </ThingPage>
  );
}

/** Takes what was made for a part in the meantime: a recipe, a mould. */
function TakenIn(): ReactNode {
  const { content, change } = useForm();
  const [search, setSearch] = useSearchParams();
  const made = madeIn(search);
  useEffect(() => {
    // What was made for all of a pattern is for whoever chooses one.
    if (made === null || made.part === '') return;
    const index = listAt(content, ['parts']).findIndex((part) => valueAt(part, ['key']) === made.part);
    if (index >= 0) change(['parts', index, made.field], made.key);
    setSearch({}, { replace: true });
    // Once for each address: drawing again before the address has changed must not take it again.
    // oxlint-disable-next-line hooks/exhaustive-deps
  }, [search]);
  return null;
}

/** Soap that looks like food is a danger of its own. */
function Likeness(): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  return (
    <div className="stack tight">
      <CheckField path={['looksEdible']} label={library.looksEdible} />
      {valueAt(content, ['looksEdible']) === true && (
        <p className="note coral small">{library.edibleCaution}</p>
      )}
    </div>
  );
}
