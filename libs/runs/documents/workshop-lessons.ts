import type { ForecastRecord, LessonsDocument, RunTeachings } from '#contract';
import { learnedFrom } from '../learned/learned-from.js';
import { forecastRecord } from '../learned/forecast-record.js';
import { presentLessons, presentOnlyDone } from './present-lessons.js';

/** What all runs of a workshop have taught its clocks, each lesson with the entries that it rests on. */
export function workshopLessons(teachings: readonly RunTeachings[]): LessonsDocument {
  const learned = learnedFrom(teachings);
  return {
    schema: 'benchtide.lessons/2',
    lessons: presentLessons(learned, teachings),
    ...presentOnlyDone(learned),
    ...presentRecord(teachings),
  };
}

/** @returns nothing to be spread where there is none */
export function presentRecord(teachings: readonly RunTeachings[]): { readonly record?: ForecastRecord } {
  const record = forecastRecord(teachings);
  return record === undefined ? {} : { record };
}
