import type { Influence, LateLoss, Why } from '#contract';
import { bearerOf, named, untilOf } from '../named.js';
import type { MessageWords, Texts } from '../words.js';

export const why: MessageWords<Why> = {
  'why.opens': ({ part, state, band, influences }, texts) => {
    const { is, after } = texts.names.states[state];
    return `${bearerOf(part, state, texts)} ist ${texts.band(band)} ${after} ${is}${pushes(influences, texts)}.`;
  },
  'why.closes': ({ part, state, band, ...late }, texts) => {
    const { after } = texts.names.states[state];
    return `${bearerOf(part, state, texts)} bleibt bis ${texts.band(band)} ${after} ${untilOf(state, texts)}.${ownWord(late, texts)}`;
  },
  'why.at-least': ({ after, minutes }, texts) =>
    `Frühestens ${texts.duration(minutes)} nach ${named(after, texts)}.`,
  'why.at-most': ({ after, minutes, ...late }, texts) =>
    `Spätestens ${texts.duration(minutes)} nach ${named(after, texts)}.${ownWord(late, texts)}`,
  'why.soonest-done': ({ part, state, minutes }, texts) => {
    const { after } = texts.names.states[state];
    return (
      `${bearerOf(part, state, texts)}: nicht früher, als Sie es je getan haben, ${texts.duration(minutes)} ${after}. ` +
      'Sie haben noch nie einen Blick eingetragen, der zu früh war; tragen Sie einen ein, dann wird die Vorhersage besser.'
    );
  },
  'why.hours': ({ at }, texts) => `Ihre Zeiten beginnen ${texts.dayTime(at)}.`,
  'why.after': ({ stages }, texts) =>
    `Jederzeit nach ${texts.and(stages.map((stage) => named(stage, texts)))}.`,
  'why.free': () => 'Beginnen Sie, wann Sie mögen.',
  'why.done': () => 'Erledigt.',
  'why.spoilt': () => 'Verdorben; wird noch einmal gemacht.',
  'why.left-out': () => 'Gehört nicht mehr zum Lauf.',
  'why.no-plan': () => 'Es gibt keinen Plan, in dem das Platz hat.',
};

function pushes(influences: readonly Influence[], texts: Texts): string {
  const because = (word: string, pushing: readonly Influence[]): string[] =>
    pushing.length === 0
      ? []
      : [
          `${word}, weil ${texts.and(pushing.map((each) => texts.names.influences[each.input](each, texts)))}`,
        ];
  const moving = influences.filter(({ isFloor }) => isFloor !== true);
  const told = [
    ...because(
      'langsamer',
      moving.filter(({ factor }) => factor > 1),
    ),
    ...because(
      'schneller',
      moving.filter(({ factor }) => factor < 1),
    ),
    ...because(
      'nicht eher',
      influences.filter(({ isFloor }) => isFloor === true),
    ),
  ];
  return told.length === 0 ? '' : `: ${told.join('; ')}`;
}

/** What the design says itself of coming later. */
function ownWord({ loses, reason }: Late, texts: Texts): string {
  if (reason === undefined) return '';
  const cost = loses === 'looks' ? 'Später leidet nur das Aussehen' : 'Später sind die Stücke verloren';
  return ` ${cost}: ${texts.quoted(reason)}.`;
}

interface Late {
  readonly loses?: LateLoss | undefined;
  readonly reason?: string | undefined;
}
