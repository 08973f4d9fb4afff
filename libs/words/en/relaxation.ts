import type { ConflictTiming, Relaxation, StageReference } from '#contract';
import { bearerWithin, named, stretch, untilOf } from '../named.js';
import type { MessageWords, Texts } from '../words.js';
import { amountOf } from './conflict.js';

export const relaxations: MessageWords<Relaxation> = {
  'relaxation.at-least': ({ stage, after, ...lengths }, texts) =>
    `Start ${named(stage, texts)} ${instead(lengths, texts, `after ${named(after, texts)}`)}.`,
  'relaxation.at-most': ({ stage, after, ...lengths }, texts) =>
    `Start ${named(stage, texts)} up to ${instead(lengths, texts, `after ${named(after, texts)}`)}.`,
  'relaxation.opens': ({ part, state, ...lengths }, texts) => {
    const { is, after } = texts.names.states[state];
    return `Get ${bearerWithin(part, state, texts)} ${is} ${instead(lengths, texts, after)}.`;
  },
  'relaxation.closes': ({ part, state, ...lengths }, texts) => {
    const { after } = texts.names.states[state];
    return `Keep ${bearerWithin(part, state, texts)} ${untilOf(state, texts)} until ${instead(lengths, texts, after)}.`;
  },
  'relaxation.cures': ({ part, minutes, insteadOf }, texts) =>
    `Let ${named(part, texts)} cure ${texts.duration(minutes)} instead of ${texts.duration(insteadOf)}.`,
  'relaxation.hours': ({ stage, minutes, from, to }, texts) =>
    `Be at the bench for ${named(stage, texts)} (${texts.duration(minutes)}), ${stretch(from, to, texts)}.`,
  'relaxation.earliest': ({ stage, at }, texts) =>
    `Start ${named(stage, texts)} as early as ${texts.dayTime(at)}.`,
  'relaxation.start': ({ stage, at }, texts) =>
    `Start ${named(stage, texts)} as late as ${texts.dayTime(at)}.`,
  'relaxation.ready-by': ({ stage, day }, texts) =>
    `Ask for ${named(stage, texts)} by ${texts.calendarDay(day)}.`,
  'relaxation.owned': ({ resource, count, insteadOf }, texts) => {
    if (resource.kind !== 'hands')
      return `Own ${amountOf(resource, count, texts)} instead of ${texts.number(insteadOf)}.`;
    return count === 2 && insteadOf === 1
      ? 'Have somebody help you.'
      : `Be ${texts.number(count)} at the bench instead of ${texts.number(insteadOf)}.`;
  },
};

export const timings: MessageWords<ConflictTiming> = {
  'timing.hours': ({ given, stage, minutes, from, to, endsAt, opensAt }, texts) =>
    `${withGiven(given, texts)}${named(stage, texts)} (${texts.duration(minutes)}) ` +
    `can start ${stretch(from, to, texts)}${closed(endsAt, opensAt, texts)}.`,
  'timing.too-late': ({ given, stage, earliest, due }, texts) => {
    const [can, must] =
      stage.stage === null ? ['can be cured', 'must be by'] : ['can start', 'has to start by'];
    // A lot must be cured as a day begins, and days are what is asked for.
    const by = stage.stage === null ? texts.day(due) : texts.dayTime(due);
    return (
      `${withGiven(given, texts)}${named(stage, texts)} ${can} ${texts.dayTime(earliest)} at the earliest; ` +
      `it ${must} ${by}.`
    );
  },
  'timing.too-early': ({ stage, latest, opens }, texts) =>
    `${named(stage, texts)} has to start by ${texts.dayTime(latest)}; it may not before ${texts.dayTime(opens)}.`,
  'timing.shared': ({ stages }, texts) => {
    const each = stages.map(
      ({ stage, minutes, from, to }) =>
        `${named(stage, texts)} (${texts.duration(minutes)}) can start ${stretch(from, to, texts)}`,
    );
    return `${each.join('; ')}.`;
  },
};

/** `6 h after … instead of 12 h` */
function instead(
  { minutes, insteadOf }: { readonly minutes: number; readonly insteadOf: number },
  texts: Texts,
  after: string,
): string {
  return `${texts.duration(minutes)} ${after} instead of ${texts.duration(insteadOf)}`;
}

function withGiven(
  given: { readonly stage: StageReference; readonly at: string } | null,
  texts: Texts,
): string {
  return given === null ? '' : `With ${named(given.stage, texts)} at ${texts.dayTime(given.at)}, `;
}

function closed(endsAt: string | null, opensAt: string | null, texts: Texts): string {
  if (endsAt !== null && opensAt !== null)
    return `; your hours end ${texts.dayTime(endsAt)} and open again ${texts.dayTime(opensAt)}`;
  if (opensAt !== null) return `; your hours open ${texts.dayTime(opensAt)}`;
  return endsAt === null ? '' : `; your hours end ${texts.dayTime(endsAt)}`;
}
