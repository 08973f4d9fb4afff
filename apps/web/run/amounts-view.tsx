import { lazy, Suspense, type ReactNode } from 'react';
import { Link } from 'react-router';
import { Failed, Loading } from '../shell/states.js';
import { Sentence } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import { Gather } from './gather.js';
import { useAmounts } from '../look/amounts.js';
import { BatchWeights } from './batch-weights.js';
import { PartWeights } from './part-weights.js';
import type { RunProps } from './run-props.js';
import { sheetCards } from './sheet-cards.js';
import { useSheet, type PartAmounts } from './use-sheet.js';

const PartHeat = lazy(() => import('./part-heat.js'));
const LeftoverOffers = lazy(() => import('../stock/leftover-offers.js'));

/** What to weigh, how surely it reaches, what to buy, what a piece costs. */
export default function AmountsView({ run }: RunProps): ReactNode {
  const { amounts: words } = useWords().run;
  const { data, error, refetch } = useSheet(run.id);
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  const [own] = data.runs;
  const titles = new Map(own?.amounts.map(({ part, title }) => [part, title]));
  return (
    <div className="stack">
      <h2>{words.made}</h2>
      <div className="run-parts">
        {sheetCards(own?.amounts ?? [], own?.batches ?? []).map((card) =>
          'shared' in card ? (
            <article key={`batch ${card.shared.parts.join(' ')}`} className="card stack tight">
              <h3>{card.shared.title}</h3>
              <BatchWeights batch={card.shared} parts={titles} />
              <Risks risks={card.shared.risks} />
            </article>
          ) : (
            <article key={card.part.part} className="card stack tight">
              <h3>{card.part.title}</h3>
              <PartWeights {...card} />
              <Reach part={card.part} run={run.id} />
              <Risks risks={[...(card.own?.risks ?? []), ...card.part.risks]} />
              {card.part.kind === 'batch' && (
                <Suspense>
                  <PartHeat run={run.id} part={card.part.part} />
                </Suspense>
              )}
            </article>
          ),
        )}
      </div>
      <Gather sheet={data} />
      <Suspense>
        <LeftoverOffers lines={data.gather.lines} run={run.key} />
      </Suspense>
      {own !== undefined && <Cost cost={own.cost} />}
    </div>
  );
}

/** How surely it reaches, and what is left over. */
function Reach({ part, run }: { readonly part: PartAmounts; readonly run: string }): ReactNode {
  const { amounts: words } = useWords().run;
  const { mass, volume, percent } = useAmounts();
  const { cover, perPiece } = part;
  const texts = useTexts();
  const amount = (value: number): string =>
    cover.unit === 'g' ? mass(value) : words.each(Math.round(value));
  return (
    <>
      {perPiece !== undefined && (
        <p className="small">
          {words.perPiece(volume(perPiece.meanMl), percent(Math.round(perPiece.spreadPercent)))}
        </p>
      )}
      <p className="small">
        {words.short(texts.odds(cover.shortageChance))};{' '}
        {words.left(amount(cover.leftover.low), amount(cover.leftover.high))}.
      </p>
      {cover.leftoverUses.length > 0 && (
        <details className="small">
          <summary>{words.uses}</summary>
          <ul>
            {cover.leftoverUses.map((use) => (
              <li key={use.code}>
                <Sentence of={use} />
              </li>
            ))}
          </ul>
        </details>
      )}
      {part.kind === 'batch' && cover.leftoverUses.length > 0 && (
        <p>
          <Link className="button plain" to={`/makings/stock/keep/${run}/${part.part}`}>
            {words.keep}
          </Link>
        </p>
      )}
    </>
  );
}

/** What may go wrong, and what would help. */
function Risks({ risks }: { readonly risks: PartAmounts['risks'] }): ReactNode {
  const { library } = useWords();
  const texts = useTexts();
  return (
    <>
      {risks.map((risk) => (
        <p key={JSON.stringify(risk)} className={`note small ${risk.level === 'high' ? 'coral' : 'amber'}`}>
          <strong>{library.levels[risk.level]}:</strong> {texts.of(risk)} {texts.remedyOf(risk)}
        </p>
      ))}
    </>
  );
}

function Cost({
  cost,
}: {
  readonly cost: NonNullable<ReturnType<typeof useSheet>['data']>['runs'][number]['cost'];
}): ReactNode {
  const { amounts: words, groupCosts } = useWords().run;
  const { money } = useAmounts();
  const each = money(cost.perPiece, cost.currency);
  if (cost.perPiece === 0) return null;
  return (
    <>
      <p>{cost.complete ? words.cost(each) : words.atLeast(each)}.</p>
      {cost.groups !== undefined && (
        <ul>
          {cost.groups.map(({ group, title, perPiece }) => (
            <li key={group}>{groupCosts(title, money(perPiece, cost.currency))}</li>
          ))}
        </ul>
      )}
    </>
  );
}
