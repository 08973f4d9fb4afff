import {
  usualResponse,
  type LogEntry,
  type MishapKind,
  type MishapResponse,
  type PlanChange,
  type PlanDocument,
} from '#contract';

const happened: Readonly<Record<MishapKind, string>> = {
  seized: 'seized',
  riced: 'riced',
  separated: 'separated',
  cracked: 'cracked',
  holes: 'came out with holes',
  'ran-short': 'ran short',
};

const answered: Readonly<Record<MishapResponse, string>> = {
  remake: 'it is made again',
  'carry-on': 'you carry on with it',
  'drop-part': 'it is left out',
};

const sawWords = { 'not-yet': 'not yet', already: 'already', 'just-now': 'just now' } as const;

/**
 * What a log entry did to the plan, in a sentence or two: what happened, what moved and what stays.
 * @param titles of parts and stages by key
 */
export function tellChanges(
  entry: LogEntry,
  titles: ReadonlyMap<string, string>,
  changes: readonly PlanChange[],
  after: PlanDocument,
): string {
  const what = whatHappened(entry, titles);
  if (after.status === 'conflict') {
    return `${what} There is no plan from here: ${after.conflict.map((c) => c.text).join(' ')}`;
  }
  if (after.status === 'undecided') return `${what} No plan was found in the steps allowed.`;
  return `${what} ${whatMoved(changes, after)}`;
}

function whatHappened(entry: LogEntry, titles: ReadonlyMap<string, string>): string {
  const title = (key: string): string => titles.get(key) ?? key;
  switch (entry.kind) {
    case 'done':
      return `“${title(entry.stage)}” is done.`;
    case 'not-yet':
      return `Not ready for “${title(entry.stage)}” yet, so it takes longer than most.`;
    case 'seen':
      return `${title(entry.part)} looked at: ${sawWords[entry.saw]} “${entry.state}”.`;
    case 'weigh-in':
      return `${counted(entry.pieces, 'piece weighs', 'pieces weigh')} ${String(entry.massG)} g: the cure is forecast with that.`;
    case 'forget':
      return 'That entry teaches the clocks nothing from now on; it stays in the log.';
    case 'take-back':
      return 'That entry counts as never written.';
    case 'weighed':
      return (
        `${counted(entry.pieces, 'piece', 'pieces')} took ${String(entry.usedG)} g of ${title(entry.part)}: ` +
        'batches are sized with that from now on.'
      );
    case 'mishap':
      return `${title(entry.part)} ${happened[entry.mishap]}: ${answered[entry.response ?? usualResponse[entry.mishap]]}.`;
  }
}

function whatMoved(changes: readonly PlanChange[], after: PlanDocument): string {
  const count = (kind: PlanChange['change']): number => changes.filter((c) => c.change === kind).length;
  const planned = after.runs.flatMap((run) => run.stages.filter((s) => s.status === 'planned')).length;
  const staying = planned - count('later') - count('earlier') - count('added');
  const parts = [
    counted(count('added'), 'is added', 'are added'),
    counted(count('removed'), 'is left out', 'are left out'),
    counted(count('later'), 'moves later', 'move later'),
    counted(count('earlier'), 'moves earlier', 'move earlier'),
  ].filter((part) => part !== '');
  if (planned === 0) return 'Nothing is left to do.';
  if (parts.length === 0) return 'Nothing moves.';
  const rest = staying === 0 ? '' : `; ${counted(staying, 'stays where it was', 'stay where they were')}`;
  return `Of the stages, ${parts.join(', ')}${rest}.`;
}

function counted(number: number, one: string, many: string): string {
  return number === 0 ? '' : `${String(number)} ${number === 1 ? one : many}`;
}
