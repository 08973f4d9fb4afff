import type { LessonsDocument, WorkshopFacts } from '#contract';
import type { PastRun } from '../input/input.js';
import { lessonsFrom } from './learn-lessons.js';
import { showLessons } from './show-lessons.js';
import { standingOfPast } from '../take-in-hand.js';

/** What all runs of a workshop have taught its clocks, each lesson with the entries that it rests on. */
export function workshopLessons(past: readonly PastRun[], workshop: WorkshopFacts): LessonsDocument {
  const book = lessonsFrom(past.map((run) => standingOfPast(run, workshop)));
  return { schema: 'benchtide.lessons/1', lessons: showLessons(book) };
}
