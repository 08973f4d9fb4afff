import type { ClockInput, ClockMessage } from '#contract';
import type { MessageWords, Texts } from '../words.js';

/** Was von den Uhren und der Reife gesagt wird. Gründe sind Satzteile: `langsamer, weil der Leim kühl ist (29 °C)`. */
export const clock: MessageWords<ClockMessage> = {
  'clock.reason': (reason, texts) =>
    `${reason.isFloor === true ? 'nicht eher' : reason.factor > 1 ? 'langsamer' : 'schneller'}, weil ${texts.names.influences[reason.input](reason, texts)}`,
  'clock.beyond': ({ rule, input, value, side, from, to }, texts) => {
    const note = texts.names.beyondRules[rule]?.[side];
    const known = texts.range(texts.read(input, from), texts.read(input, to));
    const told = `${nameOf(input, texts)} ${texts.read(input, value)} liegt außerhalb dessen, was bekannt ist (${known}). Das hier ist darum unsicherer.`;
    return note === undefined ? told : `${told} ${note}`;
  },
  'clock.move': ({ input, from, to, factor }, texts) =>
    `${nameOf(input, texts)} ${texts.read(input, to)} statt ${texts.read(input, from)}: ${effect(factor, texts)}`,
  'clock.rule': ({ rule }, texts) => texts.names.rules[rule],
  'clock.floor': ({ rule }, texts) => texts.names.rules[rule],
  'cure.few-weighings': () =>
    'Die fertigen Stücke mindestens zweimal wiegen, dann zeigt sich, wann sie so weit sind.',
  'cure.short-span': ({ days }, texts) =>
    `Mindestens ${texts.duration(days * 1440)} lang wiegen, dann zeigt sich, wann sie so weit sind. Bis dahin gilt die übliche Zeit für dieses Rezept.`,
  'cure.mass-gained': ({ days, massG }, texts) =>
    `Am Tag ${texts.number(days, 0)} wog ein Stück ${texts.mass(massG)}, über 3 % mehr als vorher. Feuchte Luft oder andere Stücke?`,
  'cure.lost-more-than-water': ({ days, massG }, texts) =>
    `Am Tag ${texts.number(days, 0)} wog ein Stück ${texts.mass(massG)}, weniger als ohne all sein Wasser. Andere Stücke?`,
  'cure.no-fit': () => 'Die Wägungen sagen noch nicht, wann die Stücke so weit sind.',
};

function nameOf(input: ClockInput, { names }: Texts): string {
  return input === 'log' ? '' : names.inputs[input];
}

/** Um wie viel es länger oder kürzer dauert. */
function effect(factor: number, texts: Texts): string {
  if (factor >= 2) return `${texts.number(factor)}-mal so lange`;
  const share = Math.abs(factor - 1);
  const size = share < 0.01 ? `unter ${texts.share(0.01)}` : texts.share(Math.round(share * 100) / 100);
  return `${size} ${factor > 1 ? 'länger' : 'kürzer'}`;
}
