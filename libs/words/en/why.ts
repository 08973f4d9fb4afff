import type { Influence, LateLoss, Why } from '#contract';
import { bearerOf, named, untilOf } from '../named.js';
import type { MessageWords, Texts } from '../words.js';

export const why: MessageWords<Why> = {
  'why.opens': ({ part, state, band, influences }, texts) => {
    const { is, after } = texts.names.states[state];
    return `${bearerOf(part, state, texts)} is ${is} ${texts.band(band)} ${after}${pushes(influences, texts)}.`;
  },
  'why.closes': ({ part, state, band, ...late }, texts) => {
    const { after } = texts.names.states[state];
    return `${bearerOf(part, state, texts)} stays ${untilOf(state, texts)} until ${texts.band(band)} ${after}.${ownWord(late, texts)}`;
  },
  'why.at-least': ({ after, minutes }, texts) =>
    `At least ${texts.duration(minutes)} after ${named(after, texts)}.`,
  'why.at-most': ({ after, minutes, ...late }, texts) =>
    `No later than ${texts.duration(minutes)} after ${named(after, texts)}.${ownWord(late, texts)}`,
  'why.soonest-done': ({ part, state, minutes }, texts) => {
    const { after } = texts.names.states[state];
    return (
      `${bearerOf(part, state, texts)}: not sooner than you have ever done it, ${texts.duration(minutes)} ${after}. ` +
      'You have never logged a look that was too early; log one, and the forecast gets better.'
    );
  },
  'why.hours': ({ at }, texts) => `Your hours open ${texts.dayTime(at)}.`,
  'why.after': ({ stages }, texts) =>
    `Any time after ${texts.and(stages.map((stage) => named(stage, texts)))}.`,
  'why.free': () => 'Start when you like.',
  'why.done': () => 'Done.',
  'why.spoilt': () => 'Spoilt; made again.',
  'why.left-out': () => 'No longer part of the run.',
  'why.no-plan': () => 'There is no plan to place it in.',
};

/** `: slower, because the batter is cool (29 °C); faster, because …`, those that push one way together. */
function pushes(influences: readonly Influence[], texts: Texts): string {
  const because = (word: string, pushing: readonly Influence[]): string[] =>
    pushing.length === 0
      ? []
      : [
          `${word}, because ${texts.and(pushing.map((each) => texts.names.influences[each.input](each, texts)))}`,
        ];
  const moving = influences.filter(({ isFloor }) => isFloor !== true);
  const told = [
    ...because(
      'slower',
      moving.filter(({ factor }) => factor > 1),
    ),
    ...because(
      'faster',
      moving.filter(({ factor }) => factor < 1),
    ),
    ...because(
      'not sooner',
      influences.filter(({ isFloor }) => isFloor === true),
    ),
  ];
  return told.length === 0 ? '' : `: ${told.join('; ')}`;
}

/** What the design says itself of coming later. */
function ownWord({ loses, reason }: Late, texts: Texts): string {
  if (reason === undefined) return '';
  const cost = loses === 'looks' ? 'Later costs looks only' : 'Later costs the pieces';
  return ` ${cost}: ${texts.quoted(reason)}.`;
}

interface Late {
  readonly loses?: LateLoss | undefined;
  readonly reason?: string | undefined;
}
