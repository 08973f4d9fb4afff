import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { CheckField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { valueAt } from '../../form/values.js';
import { useWords } from '../../words/words.js';
import { ThingEditor } from '../thing-editor.js';
import { ThingPage } from '../thing-page.js';
import { DesignSheet } from './design-sheet.js';
import { PartsEditor } from './parts-editor.js';
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
              <Likeness />
              <PartsEditor around={opened.around} />
              <StagesEditor around={opened.around} />
              <DesignSheet design={draft.content} around={opened.around} />
            </>
          )}
        </ThingEditor>
      )}
    </ThingPage>
  );
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
