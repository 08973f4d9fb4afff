import type { ReactNode } from 'react';
import { useAmounts } from '../../look/amounts.js';
import { Sentence } from '../../look/sentence.js';
import { useTexts } from '../../look/use-texts.js';
import type { SheetWeigh } from '../../run/sheet-sittings.js';
import { otherCautions, weighSections, type WeighSection } from '../../run/weigh-sections.js';
import { Confirm } from '../../shell/confirm.js';
import { Dialog } from '../../shell/dialog.js';
import { useWords } from '../../words/words.js';
import type { BenchStage } from '../bench-view.js';
import { useTicks } from './use-ticks.js';
import { tickOf, type Ticks } from './weighed.js';
import './weigh.css';

/** What is weighed for a stage, to be ticked off: it stands beside the scales, and fingers are wet. */
export default function WeighDialog({
  bench,
  weigh,
  onClose,
}: {
  readonly bench: BenchStage;
  readonly weigh: readonly SheetWeigh[];
  readonly onClose: () => void;
}): ReactNode {
  const { now } = useWords();
  const { runId, runTitle, stage } = bench;
  return (
    <Dialog title={now.about(now.weigh.open, stage.title)} onClose={onClose}>
      <div className="weigh stack">
        <p className="soft">{runTitle}</p>
        {weigh.map((each) => (
          <WeighBatch
            key={batchOf(each)}
            batch={`${runId} ${batchOf(each)} ${stage.key} ${String(stage.attempt)}`}
            weigh={each}
          />
        ))}
        <p>
          <button type="button" className="button main weigh-close" onClick={onClose}>
            {now.weigh.close}
          </button>
        </p>
      </div>
    </Dialog>
  );
}

/** One batch or part, with how much of it is ticked off. */
function WeighBatch({ batch, weigh }: { readonly batch: string; readonly weigh: SheetWeigh }): ReactNode {
  const { now, run: words } = useWords();
  const { titled, and } = useTexts();
  const [ticks, change] = useTicks(batch);
  const sections = weighSections(weigh, words.sheet, titled);
  const lines = sections.flatMap(({ key, lines: own }) =>
    own.map((line) => tickOf(ticks, `${key} ${line.key}`, line.massG)),
  );
  const ticked = lines.filter((each) => each === 'ticked').length;
  const { card } = weigh;
  const titles = 'shared' in card ? card.shared.portions.map(({ title }) => title) : [];
  return (
    <section className="stack">
      <header>
        <h3>{'shared' in card ? card.shared.title : card.part.title}</h3>
        <p className="soft small">
          {'shared' in card
            ? words.sheet.batchFor(and([...new Set(titles)]))
            : words.sheet.pieces(card.part.count)}
        </p>
        <p role="status" className="numbers">
          {ticked === lines.length && lines.length > 0 ? (
            <strong>{now.weigh.all}</strong>
          ) : (
            now.weigh.count(ticked, lines.length)
          )}
        </p>
      </header>
      {otherCautions(weigh).map((caution) => (
        <p key={caution.code} className="note amber small">
          <Sentence of={caution} />
        </p>
      ))}
      {sections.map((section) => (
        <Section key={section.key} section={section} ticks={ticks} change={change} />
      ))}
      {Object.keys(ticks).length > 0 && (
        <Confirm
          className="button plain"
          label={now.weigh.clear}
          ask={now.weigh.clearAsk}
          yes={now.weigh.clearYes}
          no={now.weigh.clearNo}
          onYes={() => change(() => ({}))}
        />
      )}
    </section>
  );
}

function Section({
  section,
  ticks,
  change,
}: {
  readonly section: WeighSection;
  readonly ticks: Ticks;
  readonly change: (by: (ticks: Ticks) => Ticks) => void;
}): ReactNode {
  const { now, run } = useWords();
  const { sheet } = run;
  const { mass } = useAmounts();
  const { key, kind, title, lines, totalG, cautions } = section;
  const names = { fats: sheet.fats, lye: sheet.lye, batter: sheet.withBatter };
  const name = kind === 'fats' || kind === 'lye' || kind === 'batter' ? names[kind] : title;
  const lineId = (line: string): string => `${key} ${line}`;
  const inBowl = lines
    .filter((line) => tickOf(ticks, lineId(line.key), line.massG) === 'ticked')
    .reduce((sum, { massG }) => sum + massG, 0);
  const set = (line: string, massG: number | undefined): void =>
    change(({ [lineId(line)]: _, ...others }) =>
      massG === undefined ? others : { ...others, [lineId(line)]: massG },
    );
  return (
    <section className="stack tight">
      {name !== undefined && <h4>{name}</h4>}
      {cautions.map((caution) => (
        <p key={caution.code} className="note coral small">
          <Sentence of={caution} />
        </p>
      ))}
      <ul className="ticks">
        {lines.map(({ key: line, title: what, massG, carrier }) => {
          const state = tickOf(ticks, lineId(line), massG);
          return (
            <li key={line}>
              <label data-state={state}>
                <input
                  type="checkbox"
                  checked={state === 'ticked'}
                  onChange={({ target }) => set(line, target.checked ? massG : undefined)}
                />
                <span>
                  {what}
                  {carrier !== undefined && (
                    <span className="soft small block">
                      {sheet.carrier(mass(carrier.massG), sheet.carriers[carrier.kind])}
                    </span>
                  )}
                  {state === 'changed' && (
                    <span className="small block weigh-changed">
                      {now.weigh.changed(mass(ticks[lineId(line)] ?? massG))}
                    </span>
                  )}
                </span>
                <strong className="numbers">{mass(massG)}</strong>
              </label>
            </li>
          );
        })}
      </ul>
      {kind === 'fats' && totalG !== undefined && lines.length > 1 && (
        <p className="numbers soft weigh-sum">{now.weigh.inBowl(mass(inBowl), mass(totalG))}</p>
      )}
    </section>
  );
}

function batchOf({ card }: SheetWeigh): string {
  return 'shared' in card ? `batch ${card.shared.batch}` : card.part.part;
}
