import type { ClockInput, ClockMessage } from '#contract';
import type { MessageWords, Texts } from '../words.js';

/** What is told of the clocks and of the cure. Reasons are parts of sentences: `slower, because the batter is cool (29 °C)`. */
export const clock: MessageWords<ClockMessage> = {
  'clock.reason': (reason, texts) =>
    `${reason.isFloor === true ? 'not sooner' : reason.factor > 1 ? 'slower' : 'quicker'}, because ${texts.names.influences[reason.input](reason, texts)}`,
  'clock.beyond': ({ rule, input, value, side, from, to }, texts) => {
    const note = texts.names.beyondRules[rule]?.[side];
    const known = texts.range(texts.read(input, from), texts.read(input, to));
    const told = `The ${nameOf(input, texts)}, ${texts.read(input, value)}, is outside what is known (${known}), so this is less sure.`;
    return note === undefined ? told : `${told} ${note}`;
  },
  'clock.move': ({ input, from, to, factor }, texts) =>
    `${nameOf(input, texts)} ${texts.read(input, to)} instead of ${texts.read(input, from)}: ${effect(factor, texts)}`,
  'clock.rule': ({ rule }, texts) => texts.names.rules[rule],
  'clock.floor': ({ rule }, texts) => texts.names.rules[rule],
  'cure.few-weighings': () => 'Weigh the finished pieces twice or more to see when they are ready.',
  'cure.short-span': ({ days }, texts) =>
    `Weigh over ${texts.duration(days * 1440)} or more to see when they are ready. Until then the usual time for this recipe stands.`,
  'cure.mass-gained': ({ days, massG }, texts) =>
    `On day ${texts.number(days, 0)} a piece weighed ${texts.mass(massG)}, over 3 % more than before. Damp air, or other pieces?`,
  'cure.lost-more-than-water': ({ days, massG }, texts) =>
    `On day ${texts.number(days, 0)} a piece weighed ${texts.mass(massG)}, less than it can without its water. Other pieces?`,
  'cure.no-fit': () => 'The weighings do not say yet when the pieces are ready.',
};

function nameOf(input: ClockInput, { names }: Texts): string {
  return input === 'log' ? '' : names.inputs[input];
}

/** How much longer or shorter it takes. */
function effect(factor: number, texts: Texts): string {
  if (factor >= 2) return `${texts.number(factor)} times as long`;
  const share = Math.abs(factor - 1);
  const size = share < 0.01 ? `under ${texts.share(0.01)}` : texts.share(Math.round(share * 100) / 100);
  return `${size} ${factor > 1 ? 'longer' : 'shorter'}`;
}
