import type { Loss } from '#contract';
import type { Requirement } from '#planner';
import { isoInstant, minute } from '#units';
import {
  dayOf,
  lagNamed,
  partReference,
  resourceNamed,
  stageNamed,
  type NetworkReferences,
} from './network-references.js';

/**
 * What goes wrong at a stage where odds are lost.
 * @param missed the requirement that was missed there
 * @param starts of the plan, by the planner's names; absent: no single plan is spoken of
 */
export function describeLoss(
  { stage: at, missed }: { readonly stage: string; readonly missed: Requirement },
  references: NetworkReferences,
  starts: ReadonlyMap<string, number> = new Map(),
): Loss {
  const stage = stageNamed(references, at);
  const day = stage.stage === null ? dayOf(references, at) : undefined;
  // A lot is not lost but late, whatever made it so.
  if (day !== undefined) return { code: 'loss.ready-by', stage, day };
  switch (missed.kind) {
    case 'lag-at-most': {
      const lag = lagNamed(references, missed.lag);
      const [after, late] = [stageNamed(references, lag.from), stageNamed(references, lag.to)];
      const { reason, assessed } = lag;
      if (reason.kind === 'link' && reason.atMostMin !== undefined)
        return { code: 'loss.at-most', stage: late, after, minutes: reason.atMostMin };
      if (reason.kind !== 'wait' || reason.wait.closes === undefined) return { code: 'loss.other', stage };
      const start = starts.get(lag.to);
      return {
        code: 'loss.closed',
        stage: late,
        part: partReference(assessed, reason.wait.part),
        state: reason.wait.closes,
        at: start === undefined ? null : isoInstant(minute(start)),
      };
    }
    case 'calendar':
      return { code: 'loss.hours', stage };
    case 'resource':
      return { code: 'loss.shared', stage, resource: resourceNamed(references, missed.resource) };
    case 'lag-at-least':
    case 'earliest':
    case 'latest':
    case 'fixed':
    case 'horizon':
      return { code: 'loss.other', stage };
  }
}
