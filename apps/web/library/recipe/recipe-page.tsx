import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { TextField } from '../../form/fields.js';
import { useWords } from '../../words/words.js';
import { textAt } from '../../form/values.js';
import { HeatCard } from '../heat/heat-card.js';
import { ThingEditor } from '../thing-editor.js';
import { ThingPage } from '../thing-page.js';
import { ClockList } from './clock-list.js';
import { FatsEditor } from './fats-editor.js';
import { ExtrasFields } from './extras-fields.js';
import { LiveSheet } from './live-sheet.js';
import { LyeFields } from './lye-fields.js';
import { usePreview } from './use-preview.js';
import { WorkFields } from './work-fields.js';
import { usePurpose } from './use-purpose.js';
import type { Draft } from '../../form/use-draft.js';
import type { Around } from '../checks.js';

const blank = { fats: [{}], superfatPercent: 5, lyeConcentrationPercent: 33 };

/** One recipe: its fats, lye and additions, with the amounts and clocks they lead to beside them. */
export default function RecipePage(): ReactNode {
  const { library } = useWords();
  return (
    <ThingPage kind="recipes" blank={blank}>
      {({ thing, ...opened }) => (
        <ThingEditor key={thing?.id ?? 'new'} kind="recipes" thing={thing} {...opened}>
          {(draft) => (
            <>
              <div className="row apart">
                <TextField path={['title']} label={library.name} />
                {thing !== null && (
                  <Link className="button plain" to={`/makings/recipes/new?like=${thing.id}`}>
                    {library.copy}
                  </Link>
                )}
              </div>
              <RecipeBody draft={draft} around={opened.around} />
            </>
          )}
        </ThingEditor>
      )}
    </ThingPage>
  );
}

function RecipeBody({ draft, around }: { readonly draft: Draft; readonly around: Around }): ReactNode {
  const [purpose, setPurpose] = usePurpose(around.moulds);
  const preview = usePreview(draft.content, purpose, around);
  return (
    <>
      <div className="beside long">
        <FatsEditor own={around.fats} batch={preview.amounts?.batch} />
        <LyeFields views={preview.amounts?.batch?.water} />
        <LiveSheet preview={preview} purpose={purpose} onPurpose={setPurpose} moulds={around.moulds} />
        <ExtrasFields />
        <WorkFields />
      </div>
      {preview.clocks !== undefined && (purpose.by === 'volume' || preview.clocks.heat !== null) && (
        <HeatCard heat={preview.clocks.heat} title={textAt(draft.content, ['title'])} />
      )}
      <ClockList clocks={preview.clocks} />
    </>
  );
}
