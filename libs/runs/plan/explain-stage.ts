import type { Reason } from '#clocks';
import type { Influence, Link, PartReference, SoapState, Wait, Why } from '#contract';
import { isoInstant, minute } from '#units';
import type { StageAttempt } from '../log/run-progress.js';
import type { AssessedRun } from '../assessed-run.js';
import { latenessOf } from '../input/lateness.js';
import { demandBand } from './describe-conflict.js';
import { earliestOf } from './network-lags.js';
import { partReference, stageReference } from './network-references.js';
import type { StageWindow } from './stage-windows.js';

/** How many influences are told of each clock. */
const TOLD = 2;
/** An influence whose logarithm is below this moves a time by hours over weeks, by seconds over minutes. */
const TOO_SMALL = 0.02;

/** Why a stage lies where it does: what it waits for, with what pushes that most, and what closes it. */
export function explainStage(assessed: AssessedRun, attempt: StageAttempt, window: StageWindow): Why[] {
  const { waits, links } = assessed.run.design;
  const { key } = attempt.stage;
  const found = [
    ...waits.filter(({ stage }) => stage === key).flatMap((wait) => waitReasons(assessed, wait)),
    ...links.filter(({ to }) => to === key).flatMap((link) => linkReasons(assessed, link)),
    ...hoursReason(window),
  ];
  return found.length > 0 ? found : [orderReason(assessed, key)];
}

function waitReasons(assessed: AssessedRun, wait: Wait): Why[] {
  const reasons: Why[] = [];
  if (wait.opens !== undefined) {
    const influences = strongest(assessed.clocks.get(wait.part)?.get(wait.opens)?.reasons ?? []);
    const { band, ...of } = stateOf(assessed, wait.part, wait.opens);
    reasons.push({ code: 'why.opens', ...of, band, influences });
    // Sooner than it is likely to be ready, when it was done before holds nothing.
    const soonest = earliestOf(assessed, wait);
    if (soonest !== undefined && soonest > band.likely) {
      reasons.push({ code: 'why.soonest-done', ...of, minutes: soonest });
    }
  }
  if (wait.closes !== undefined)
    reasons.push({
      ...{ code: 'why.closes', ...stateOf(assessed, wait.part, wait.closes) },
      ...latenessOf(assessed.run.design, wait),
    });
  return reasons;
}

function linkReasons(assessed: AssessedRun, link: Link): Why[] {
  const { from, atLeastMin, atMostMin } = link;
  const after = stageReference(assessed, from);
  return [
    ...(atLeastMin > 0 ? [{ code: 'why.at-least' as const, after, minutes: atLeastMin }] : []),
    ...(atMostMin === undefined
      ? []
      : [
          {
            code: 'why.at-most' as const,
            after,
            minutes: atMostMin,
            ...latenessOf(assessed.run.design, link),
          },
        ]),
  ];
}

function hoursReason({ likely, opens }: StageWindow): Why[] {
  return likely.earliestBy.kind === 'calendar' ? [{ code: 'why.hours', at: isoInstant(minute(opens)) }] : [];
}

/** What a stage follows when nothing but order, hours and hands decides. */
function orderReason(assessed: AssessedRun, stage: string): Why {
  const before = assessed.run.design.links.filter(({ to }) => to === stage);
  const stages = before.map(({ from }) => stageReference(assessed, from));
  return stages.length === 0 ? { code: 'why.free' } : { code: 'why.after', stages };
}

function stateOf(
  assessed: AssessedRun,
  part: string,
  state: SoapState,
): { readonly part: PartReference; readonly state: SoapState; readonly band: ReturnType<typeof demandBand> } {
  return { part: partReference(assessed, part), state, band: demandBand(assessed, part, state) };
}

/** Those that push most, and the floor that holds a time up, however little. */
function strongest(reasons: readonly Reason[]): Influence[] {
  const size = ({ factor }: Reason): number => Math.abs(Math.log(factor));
  const telling = reasons.filter((reason) => size(reason) > TOO_SMALL);
  const pushing = telling
    .filter(({ isFloor }) => isFloor !== true)
    .sort((a, b) => size(b) - size(a))
    .slice(0, TOLD);
  const floors = telling.filter(({ isFloor }) => isFloor === true);
  return [...floors, ...pushing].map(({ input, value, usual, factor, isFloor }) => ({
    ...{ input, value, usual, factor },
    ...(isFloor && { isFloor }),
  }));
}
