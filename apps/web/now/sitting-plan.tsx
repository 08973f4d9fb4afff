import type { ReactNode } from 'react';
import { useThings } from '../library/shelf-calls.js';
import { useAmounts } from '../look/amounts.js';
import { StagePieces } from '../look/stage-pieces.js';
import { useTimes } from '../look/times.js';
import { useTexts } from '../look/use-texts.js';
import { useWorkshop } from '../run/use-run.js';
import { weighSections } from '../run/weigh-sections.js';
import { useWords } from '../words/words.js';
import type { BenchRun, BenchSitting, BenchStage } from './bench-view.js';
import { gearFor, materialsFor, planOf, toolsFor } from './sitting-facts.js';
import type { WeighFor } from './use-weigh.js';
import { WeighLink } from './weigh/weigh-link.js';

interface SittingProps {
  readonly sitting: BenchSitting;
  readonly runs: readonly BenchRun[];
  readonly weighFor: WeighFor;
}

/** The evening before: what will be done when, and how long it takes. */
export function SittingJobs({ sitting, runs, weighFor }: SittingProps): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const { duration } = useTexts();
  return (
    <ol className="jobs" aria-label={now.plan.jobs}>
      {openIn(sitting).map((bench) => {
        const { runId, stage } = bench;
        const run = runs.find((each) => each.run.id === runId);
        const minutes = (Date.parse(stage.endAt) - Date.parse(stage.startAt)) / 60_000;
        return (
          <li key={`${runId} ${stage.key} ${String(stage.attempt)}`}>
            <span className="numbers when">{times.time(stage.startAt)}</span>
            <span>
              {stage.title}
              <StagePieces stage={stage} all={run && planOf(run)?.groups} />
              {minutes > 0 && <span className="soft small numbers"> · {duration(minutes)}</span>}
            </span>
            <WeighLink bench={bench} weigh={weighFor(bench)} />
          </li>
        );
      })}
    </ol>
  );
}

/** What to lay out before a sitting begins. */
export function GetOut({ sitting, runs, weighFor }: SittingProps): ReactNode {
  const { now, run: words } = useWords();
  const { titled, and } = useTexts();
  const { mass, number } = useAmounts();
  const { data: things = [] } = useThings('moulds');
  const { data: workshop } = useWorkshop();
  const open = openIn(sitting);
  const weigh = open.flatMap(weighFor);
  const { moulds, equipment } = gearFor(open, runs);
  const own = [...equipment].flatMap(([key, count]) => {
    const found = workshop?.facts.equipment.find((each) => each.key === key);
    return found === undefined ? [] : [now.plan.times(found.title, count, number(count, 0))];
  });
  const inMoulds = moulds.flatMap((key) =>
    things.flatMap(({ content }) => (content.key === key ? [content.title] : [])),
  );
  const materials = materialsFor(weigh.flatMap((each) => weighSections(each, words.sheet, titled)));
  const usual = toolsFor(open, weigh).map((tool) => now.plan.tools[tool]);
  return (
    <dl className="get-out">
      {inMoulds.length > 0 && <Lie name={now.plan.moulds}>{and(inMoulds)}</Lie>}
      {usual.length + own.length > 0 && <Lie name={now.plan.gear}>{[...own, ...usual].join(', ')}</Lie>}
      {materials.length > 0 && (
        <Lie name={now.plan.materials}>
          <ul>
            {materials.map(({ key, title, massG }) => (
              <li key={key}>
                {title} <span className="numbers soft">{mass(massG)}</span>
              </li>
            ))}
          </ul>
        </Lie>
      )}
    </dl>
  );
}

function Lie({ name, children }: { readonly name: string; readonly children: ReactNode }): ReactNode {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function openIn({ stages }: BenchSitting): readonly BenchStage[] {
  return stages.filter(({ state }) => state === 'open');
}
