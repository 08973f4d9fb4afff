import { usualResponse } from '#contract';
import type {
  LogAnswer,
  LogEntry,
  Logged,
  PieceDesign,
  PlanChange,
  PlanDocument,
  PlanEffect,
} from '#contract';

/**
 * What a log entry tells.
 * @param design of the run, whose titles are told; a key that it does not know stands for itself
 */
export function describeEntry(entry: LogEntry, { stages, parts }: PieceDesign): Logged {
  const titleIn = (list: readonly { readonly key: string; readonly title: string }[], key: string): string =>
    list.find((each) => each.key === key)?.title ?? key;
  const stage = (key: string) => ({ stage: key, title: titleIn(stages, key) });
  const part = (key: string) => ({ part: key, title: titleIn(parts, key) });
  switch (entry.kind) {
    case 'done':
    case 'not-yet':
      return { code: `logged.${entry.kind}`, stage: stage(entry.stage) };
    case 'seen': {
      const { state, saw } = entry;
      return { code: 'logged.seen', part: part(entry.part), state, saw };
    }
    case 'weighed': {
      const { pieces, usedG } = entry;
      return { code: 'logged.weighed', part: part(entry.part), pieces, usedG };
    }
    case 'weigh-in': {
      const { pieces, massG } = entry;
      return { code: 'logged.weigh-in', pieces, massG };
    }
    case 'mishap': {
      const { mishap, response = usualResponse[mishap] } = entry;
      if (entry.onPurpose === true) return { code: 'logged.left-out', part: part(entry.part) };
      return { code: 'logged.mishap', part: part(entry.part), mishap, response };
    }
    case 'note':
      return { code: 'logged.note', ...(entry.stage !== undefined && { stage: stage(entry.stage) }) };
    case 'forget':
    case 'take-back':
      return { code: `logged.${entry.kind}` };
  }
}

/** What an entry did to the plan: what moved and what stays; where there is no plan any more, why. */
export function describeEffect(changes: readonly PlanChange[], after: PlanDocument): LogAnswer['why'] {
  if (after.status === 'conflict') return [{ code: 'effect.no-plan' }, ...after.conflict];
  return [after.status === 'undecided' ? { code: 'effect.undecided' } : movesOf(changes, after)];
}

function movesOf(changes: readonly PlanChange[], after: PlanDocument): PlanEffect {
  const count = (kind: PlanChange['change']): number => changes.filter((c) => c.change === kind).length;
  const moves = {
    ...{ added: count('added'), removed: count('removed') },
    ...{ later: count('later'), earlier: count('earlier') },
  };
  const planned = after.runs.flatMap((run) => run.stages.filter((s) => s.status === 'planned')).length;
  if (planned === 0) return { code: 'effect.nothing-left' };
  if (Object.values(moves).every((moved) => moved === 0)) return { code: 'effect.nothing-moves' };
  return { code: 'effect.moves', ...moves, stay: planned - moves.later - moves.earlier - moves.added };
}
