import type { ConflictReason, Loss, ResourceReference, StageReference } from '#contract';
import { bearerWithin, named, untilOf } from '../named.js';
import type { MessageWords, Texts } from '../words.js';

export const conflictReasons: MessageWords<ConflictReason> = {
  'conflict.after': ({ stage, after }, texts) => `${named(stage, texts)} comes after ${named(after, texts)}.`,
  'conflict.at-least': ({ stage, after, minutes }, texts) =>
    `${named(stage, texts)} starts at least ${texts.duration(minutes)} after ${named(after, texts)}.`,
  'conflict.at-most': ({ stage, after, minutes }, texts) =>
    `${named(stage, texts)} starts no later than ${texts.duration(minutes)} after ${named(after, texts)}.`,
  'conflict.made': ({ stage, part }, texts) =>
    `${named(stage, texts)} comes after ${named(part, texts)} is made.`,
  'conflict.opens': ({ stage, part, state, band }, texts) => {
    const { is, after } = texts.names.states[state];
    return `${named(stage, texts)} waits until ${bearerWithin(part, state, texts)} is ${is}: ${texts.band(band)} ${after}.`;
  },
  'conflict.closes': ({ stage, part, state, band }, texts) => {
    const { after } = texts.names.states[state];
    return (
      `${named(stage, texts)} must be done while ${bearerWithin(part, state, texts)} is ${untilOf(state, texts)}: ` +
      `until ${texts.band(band)} ${after}.`
    );
  },
  'conflict.cures': ({ part, band }, texts) => `${named(part, texts)} cures for ${texts.band(band)}.`,
  'conflict.hours': ({ stage, minutes }, texts) =>
    `${named(stage, texts)} takes ${texts.duration(minutes)} in one go and has to fit into your hours.`,
  'conflict.earliest': ({ stage, at }, texts) =>
    `${named(stage, texts)} may not start before ${texts.dayTime(at)}.`,
  'conflict.start': ({ stage, at }, texts) => `${named(stage, texts)} is to start ${texts.dayTime(at)}.`,
  'conflict.ready-by': ({ stage, day }, texts) =>
    `${named(stage, texts)} must be cured by ${texts.calendarDay(day)}.`,
  'conflict.done': ({ stage, at }, texts) => `${named(stage, texts)} was started ${texts.dayTime(at)}.`,
  'conflict.shared': ({ resource, owned, stages }, texts) =>
    `${ownedText(resource, owned, texts)}, and ${listed(stages, texts)} cannot all have ${it(resource, owned)}.`,
  'conflict.order': ({ resource, stages }, texts) => {
    const what = resource.kind === 'hands' ? 'your hands go' : `${texts.quoted(resource.title)} goes`;
    const [first, ...more] = stages.map((stage) => named(stage, texts));
    return `In this plan ${what} from ${[first, ...more].join(' to ')}.`;
  },
  'conflict.too-few': ({ stage, resource, needed, owned }, texts) =>
    `${named(stage, texts)} needs ${amountOf(resource, needed, texts)} at once; ` +
    `there ${owned === 1 ? 'is' : 'are'} ${texts.number(owned)}. ` +
    'Make fewer pieces, or two runs one after the other.',
  'conflict.horizon': ({ days }, texts) => `Plans look ${texts.number(days, 0)} days ahead, no further.`,
  'conflict.input': ({ value }, texts) =>
    `What this run is made from does not fit together any more${value === null ? '' : `: ${texts.quoted(value)}`}. ` +
    'Check your moulds, equipment and recipes.',
};

export const losses: MessageWords<Loss> = {
  'loss.closed': ({ stage, part, state, at }, texts) => {
    const by = at === null ? `When it is time for ${named(stage, texts)}` : `By ${texts.dayTime(at)}`;
    return `${by}, ${bearerWithin(part, state, texts)} may no longer be ${untilOf(state, texts)}.`;
  },
  'loss.at-most': ({ stage, after, minutes }, texts) =>
    `${named(stage, texts)} may have to start later than ${texts.duration(minutes)} after ${named(after, texts)}.`,
  'loss.hours': ({ stage }, texts) => `${named(stage, texts)} may no longer fit into your hours.`,
  'loss.ready-by': ({ stage, day }, texts) =>
    `${named(stage, texts)} may not be cured by ${texts.calendarDay(day)}.`,
  'loss.shared': ({ stage, resource }, texts) =>
    resource.kind === 'hands'
      ? `You may still be busy when it is time for ${named(stage, texts)}.`
      : `${texts.quoted(resource.title)} may still be in use when it is time for ${named(stage, texts)}.`,
  'loss.batter': ({ part, minutes, leaves }, texts) =>
    `The batter of ${named(part, texts)} leaves ${texts.band(leaves)}; all pieces take ${texts.duration(minutes)}.`,
  'loss.other': ({ stage }, texts) => `${named(stage, texts)} may come too late.`,
};

function ownedText(resource: ResourceReference, owned: number, texts: Texts): string {
  if (resource.kind === 'hands')
    return owned === 1 ? 'You have one pair of hands' : `There are ${texts.number(owned)} of you`;
  return `You own ${amountOf(resource, owned, texts)}`;
}

function it({ kind }: ResourceReference, owned: number): string {
  return kind === 'hands' || owned === 1 ? 'that at the same time' : 'them at the same time';
}

/** `24 cavities of “Hexagon mould”`, `2 of “Tray”`. */
export function amountOf(resource: ResourceReference, count: number, texts: Texts): string {
  if (resource.kind === 'hands')
    return count === 1 ? 'one pair of hands' : `${texts.number(count)} pairs of hands`;
  const title = texts.quoted(resource.title);
  if (resource.kind === 'equipment') return `${texts.number(count)} of ${title}`;
  return `${texts.number(count)} ${count === 1 ? 'cavity' : 'cavities'} of ${title}`;
}

function listed(stages: readonly StageReference[], texts: Texts): string {
  return texts.and(stages.map((stage) => named(stage, texts)));
}
