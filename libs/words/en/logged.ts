import type { Logged, PlanCause, PlanEffect } from '#contract';
import type { MessageWords, Texts } from '../words.js';

const happened = {
  seized: 'seized',
  riced: 'riced',
  separated: 'separated',
  cracked: 'cracked',
  holes: 'came out with holes',
  'ran-short': 'ran short',
} as const;
const answered = {
  remake: 'make it again',
  'carry-on': 'carry on with it',
  'drop-part': 'leave it out',
} as const;
const saw = { 'not-yet': 'not yet', already: 'already', 'just-now': 'just now' } as const;

export const logged: MessageWords<Logged> = {
  'logged.done': ({ stage }, texts) => `${texts.quoted(stage.title)} is done.`,
  'logged.not-yet': ({ stage }, texts) =>
    `Not ready for ${texts.quoted(stage.title)} yet: it takes longer than most.`,
  'logged.seen': ({ part, state, saw: when }, texts) =>
    `${texts.quoted(part.title)} is ${saw[when]} ${texts.names.states[state].is}.`,
  'logged.weighed': ({ part, pieces, usedG }, texts) =>
    `${piecesOf(pieces, texts)} took ${texts.mass(usedG)} of ${texts.quoted(part.title)}. Batches are sized with that now.`,
  'logged.weigh-in': ({ pieces, massG }, texts) =>
    `${piecesOf(pieces, texts)} ${pieces === 1 ? 'weighs' : 'weigh'} ${texts.mass(massG)}. The cure is forecast with that.`,
  'logged.mishap': ({ part, mishap, response }, texts) =>
    `${texts.quoted(part.title)} ${happened[mishap]}: ${answered[response]}.`,
  'logged.left-out': ({ part }, texts) =>
    `${texts.quoted(part.title)} is left out so that the plan holds. Nothing went wrong.`,
  'logged.note': ({ stage }, texts) =>
    stage === undefined ? 'Note written.' : `Note at ${texts.quoted(stage.title)} written.`,
  'logged.forget': () => 'That entry teaches nothing from now on. It stays in the log.',
  'logged.take-back': () => 'That entry counts as never written.',
};

export const effects: MessageWords<PlanEffect> = {
  'effect.moves': ({ stay, ...moved }, texts) => {
    const parts = [
      counted(moved.added, 'is added', 'are added', texts),
      counted(moved.removed, 'is left out', 'are left out', texts),
      counted(moved.later, 'moves later', 'move later', texts),
      counted(moved.earlier, 'moves earlier', 'move earlier', texts),
    ].flat();
    const rest = counted(stay, 'stays where it was', 'stay where they were', texts).map(
      (text) => `; ${text}`,
    );
    return `Of the stages, ${parts.join(', ')}${rest.join('')}.`;
  },
  'effect.nothing-moves': () => 'Nothing moves.',
  'effect.nothing-left': () => 'Nothing is left to do.',
  'effect.no-plan': () => 'There is no plan from here.',
  'effect.undecided': () => 'No plan was found in time. Open stages stay where they were.',
  'effect.only-lessons': () => 'This run stays cancelled. Only what it teaches is put right.',
};

const changes: Readonly<Record<string, string>> = {
  recipe: 'another recipe',
  start: 'another start',
  hours: 'other hours',
  count: 'another number of pieces',
  split: 'two runs instead of one',
  cavities: 'more cavities',
  'drop-parts': 'a part left out',
  'ready-by': 'another day',
  'plan-anew': 'planned anew',
};

export const causes: MessageWords<PlanCause> = {
  'cause.first-plan': () => 'First plan.',
  'cause.asked': () => 'You asked for it.',
  'cause.change': ({ change }) => `Changed: ${changes[change] ?? 'as you chose'}.`,
  'cause.logged': ({ what }, texts) => `Logged: ${what === null ? 'an entry.' : texts.of(what)}`,
};

function piecesOf(count: number, texts: Texts): string {
  return `${texts.number(count)} ${count === 1 ? 'piece' : 'pieces'}`;
}

function counted(number: number, one: string, many: string, texts: Texts): string[] {
  return number === 0 ? [] : [`${texts.number(number)} ${number === 1 ? one : many}`];
}
