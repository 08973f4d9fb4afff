import type { ReactNode } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { SelectField, TextField } from '../form/fields.js';
import { MeasureField } from '../form/number-field.js';
import { valueAt } from '../form/values.js';
import { useAmounts } from '../look/amounts.js';
import { useTimes } from '../look/times.js';
import { usePlan, useRun } from './use-run.js';
import { useSheet } from './use-sheet.js';
import { useThings } from '../library/shelf-calls.js';
import { Failed, Loading, NothingHere } from '../shell/states.js';
import { EntryForm } from '../stock/entry-form.js';
import { useStockWords } from '../stock/stock-words.js';
import type { EntryNow } from '../stock/use-stock.js';
import '../form/form.css';
import '../library/library.css';

/** Keeps what is left of a batch of a run. */
export default function KeepPage(): ReactNode {
  const { run: id = '', part: key = '' } = useParams();
  const words = useStockWords();
  const { mass } = useAmounts();
  const { dayTime } = useTimes();
  const navigate = useNavigate();
  const [run, plan, sheet, recipes] = [useRun(id), usePlan(id), useSheet(id), useThings('recipes')];
  const failed = [run, plan, sheet].find(({ data, error }) => error !== null && data === undefined);
  if (failed?.error) return <Failed error={failed.error} again={() => void failed.refetch()} />;
  if (!run.data || !plan.data || !sheet.data) return <Loading />;
  const part = sheet.data.runs[0]?.amounts.find((each) => each.part === key);
  if (part === undefined) return <NothingHere />;
  const madeAt = plan.data.document.runs[0]?.stages.findLast(
    (stage) => stage.part === key && stage.status === 'done' && isMaking(stage.kind),
  )?.endAt;
  const recipe = recipes.data?.find(({ content }) => content.key === part.recipe)?.content.title;
  return (
    <div className="stack">
      <header className="stack tight">
        <p>
          <Link className="tap" to={`/runs/${id}/amounts`}>
            ‹ {run.data.order.title}
          </Link>
        </p>
        <h1>{words.keepOf(part.title)}</h1>
        {madeAt !== undefined && <p className="soft">{dayTime(madeAt)}</p>}
      </header>
      {madeAt === undefined ? (
        <p className="note amber">{words.notMade}</p>
      ) : (
        <section className="card stack tight">
          <p className="note amber small">{words.doughKeeps}</p>
          <EntryForm
            label={words.keepTitle}
            blank={{ title: part.title, form: 'dough' }}
            entryOf={(content) =>
              ({
                kind: 'leftover-kept',
                title: valueAt(content, ['title']),
                form: valueAt(content, ['form']),
                massG: valueAt(content, ['massG']),
                run: run.data.key,
                part: key,
                ...(recipe !== undefined && { recipe }),
                madeAt,
              }) as unknown as EntryNow
            }
            said={() => words.entered}
            button={words.keepNow}
            onWritten={() => void navigate('/makings/stock')}
          >
            {() => (
              <div className="fields">
                <TextField path={['title']} label={words.itIs} />
                <SelectField
                  path={['form']}
                  label={words.keptAs}
                  choices={(['dough', 'small-pieces'] as const).map((value) => ({
                    value,
                    text: words.forms[value],
                  }))}
                />
                <MeasureField
                  path={['massG']}
                  label={words.weight}
                  dimension="mass"
                  hint={words.weightHint(mass(part.cover.expectedLeftover))}
                />
              </div>
            )}
          </EntryForm>
        </section>
      )}
    </div>
  );
}

/** The stages that make a part from its batter. */
function isMaking(kind: string): boolean {
  return ['pour', 'layer', 'dip', 'pipe', 'glaze', 'mix'].includes(kind);
}
