import type { ConflictTiming, Relaxation, StageReference } from '#contract';
import { bearerOf, named, stretch, untilOf } from '../named.js';
import type { MessageWords, Texts } from '../words.js';
import { amountOf } from './conflict.js';

export const relaxations: MessageWords<Relaxation> = {
  'relaxation.at-least': ({ stage, after, ...lengths }, texts) =>
    `${named(stage, texts)} ${instead(lengths, texts, `nach ${named(after, texts)}`)} beginnen.`,
  'relaxation.at-most': ({ stage, after, ...lengths }, texts) =>
    `${named(stage, texts)} bis ${instead(lengths, texts, `nach ${named(after, texts)}`)} beginnen.`,
  'relaxation.opens': ({ part, state, ...lengths }, texts) => {
    const { is, after } = texts.names.states[state];
    return `${bearerOf(part, state, texts)} müsste ${instead(lengths, texts, after)} ${is} sein.`;
  },
  'relaxation.closes': ({ part, state, ...lengths }, texts) => {
    const { after } = texts.names.states[state];
    return `${bearerOf(part, state, texts)} müsste bis ${instead(lengths, texts, after)} ${untilOf(state, texts)} bleiben.`;
  },
  'relaxation.cures': ({ part, minutes, insteadOf }, texts) =>
    `${named(part, texts)} ${texts.duration(minutes)} reifen lassen statt ${texts.duration(insteadOf)}.`,
  'relaxation.hours': ({ stage, minutes, from, to }, texts) =>
    `Für ${named(stage, texts)} (${texts.duration(minutes)}) am Arbeitstisch sein, ${stretch(from, to, texts)}.`,
  'relaxation.earliest': ({ stage, at }, texts) =>
    `${named(stage, texts)} schon ${texts.dayTime(at)} beginnen.`,
  'relaxation.start': ({ stage, at }, texts) => `${named(stage, texts)} erst ${texts.dayTime(at)} beginnen.`,
  'relaxation.ready-by': ({ stage, day }, texts) =>
    `${named(stage, texts)} erst bis ${texts.calendarDay(day)} verlangen.`,
  'relaxation.owned': ({ resource, count, insteadOf }, texts) => {
    if (resource.kind !== 'hands')
      return `${amountOf(resource, count, texts)} haben statt ${texts.number(insteadOf)}.`;
    return count === 2 && insteadOf === 1
      ? 'Sich von jemandem helfen lassen.'
      : `Mit ${texts.number(count)} Personen arbeiten statt ${texts.number(insteadOf)}.`;
  },
};

export const timings: MessageWords<ConflictTiming> = {
  'timing.hours': ({ given, stage, minutes, from, to, endsAt, opensAt }, texts) =>
    `${withGiven(given, texts)}${named(stage, texts)} (${texts.duration(minutes)}) ` +
    `kann beginnen: ${stretch(from, to, texts)}${closed(endsAt, opensAt, texts)}.`,
  'timing.too-late': ({ given, stage, earliest, due }, texts) => {
    const [can, must] =
      stage.stage === null
        ? ['kann frühestens', 'reif sein, muss es aber bis']
        : ['kann frühestens', 'beginnen, muss aber bis'];
    // A lot must be cured as a day begins, and days are what is asked for.
    const by = stage.stage === null ? texts.day(due) : texts.dayTime(due);
    return (
      `${withGiven(given, texts)}${named(stage, texts)} ${can} ${texts.dayTime(earliest)} ${must} ` + `${by}.`
    );
  },
  'timing.too-early': ({ stage, latest, opens }, texts) =>
    `${named(stage, texts)} muss bis ${texts.dayTime(latest)} beginnen, darf aber nicht vor ${texts.dayTime(opens)}.`,
  'timing.shared': ({ stages }, texts) => {
    const each = stages.map(
      ({ stage, minutes, from, to }) =>
        `${named(stage, texts)} (${texts.duration(minutes)}) kann beginnen: ${stretch(from, to, texts)}`,
    );
    return `${each.join('; ')}.`;
  },
};

/** `6 h nach … statt 12 h` */
function instead(
  { minutes, insteadOf }: { readonly minutes: number; readonly insteadOf: number },
  texts: Texts,
  after: string,
): string {
  return `${texts.duration(minutes)} ${after} statt ${texts.duration(insteadOf)}`;
}

function withGiven(
  given: { readonly stage: StageReference; readonly at: string } | null,
  texts: Texts,
): string {
  return given === null ? '' : `Mit ${named(given.stage, texts)} ${texts.dayTime(given.at)}: `;
}

function closed(endsAt: string | null, opensAt: string | null, texts: Texts): string {
  if (endsAt !== null && opensAt !== null)
    return `; Ihre Zeiten enden ${texts.dayTime(endsAt)} und beginnen wieder ${texts.dayTime(opensAt)}`;
  if (opensAt !== null) return `; Ihre Zeiten beginnen ${texts.dayTime(opensAt)}`;
  return endsAt === null ? '' : `; Ihre Zeiten enden ${texts.dayTime(endsAt)}`;
}
