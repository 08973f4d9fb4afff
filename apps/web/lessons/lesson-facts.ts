import type { Schemas } from '../api/client.js';

export type Lesson = Schemas['Lesson'];
export type Pace = Lesson['pace'];
type LoggedEntry = Schemas['LoggedEntry'];

/** All that was learned of one pace: of the workshop at large, and of each recipe that was logged. */
export interface PaceLessons {
  readonly pace: Pace;
  readonly workshop: Lesson;
  readonly recipes: readonly Lesson[];
}

/** In the order in which the API tells them; a pace without a lesson for the workshop has none at all. */
export function byPace(lessons: readonly Lesson[]): PaceLessons[] {
  return lessons
    .filter(({ recipe }) => recipe === null)
    .map((workshop) => ({
      pace: workshop.pace,
      workshop,
      recipes: lessons.filter(({ pace, recipe }) => pace === workshop.pace && recipe !== null),
    }));
}

/** From here on a difference is worth a word; below it is rounding. */
const WORTH_TELLING = 0.02;

/** What a factor means: so much slower or quicker than usual, as a share of the usual time. */
export function tempoOf(factor: number): {
  readonly kind: 'slower' | 'quicker' | 'same';
  readonly by: number;
} {
  const by = Math.abs(factor - 1);
  if (by < WORTH_TELLING) return { kind: 'same', by: 0 };
  return { kind: factor > 1 ? 'slower' : 'quicker', by };
}

/** At least so far either side of the usual, so that no picture makes much of little. */
const LEAST_RANGE = 1.8;

/** Factors that a picture has to show so that all bands fit, as far below 1 as above when seen as ratios. */
export function factorRange(
  lessons: readonly Pick<Lesson, 'factor' | 'before'>[],
): readonly [number, number] {
  const ends = lessons.flatMap(({ factor, before }) => [factor.low, factor.high, before.low, before.high]);
  const widest = Math.max(LEAST_RANGE, ...ends.map((end) => Math.max(end, 1 / end))) * 1.08;
  return [1 / widest, widest];
}

/** Where an entry that a lesson rests on is found. @param reference RUN/ENTRY: key of the run, id of the entry */
export function placeOf(reference: string): { readonly run: string; readonly entry: string } {
  const slash = reference.indexOf('/');
  return { run: reference.slice(0, slash), entry: reference.slice(slash + 1) };
}

/** An entry that teaches nothing any more, and the entry that says so. */
export interface Forgotten {
  readonly saidBy: string;
  readonly entry: LoggedEntry;
}

/** What of a run's log was forgotten and is so still: a `forget` that was taken back, or whose entry was, is not. */
export function forgottenIn(log: readonly LoggedEntry[]): Forgotten[] {
  const takenBack = new Set(log.flatMap(({ entry }) => (entry.kind === 'take-back' ? [entry.entry] : [])));
  return log.flatMap(({ id, entry }) => {
    if (entry.kind !== 'forget' || takenBack.has(id) || takenBack.has(entry.entry)) return [];
    const meant = log.find((each) => each.id === entry.entry);
    return meant === undefined ? [] : [{ saidBy: id, entry: meant }];
  });
}
