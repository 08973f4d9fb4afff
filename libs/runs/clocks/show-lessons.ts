import {
  forecast,
  ofTypicalWorkshop,
  offsetPrior,
  referenceInputs,
  stateIds,
  paceOf,
  type Lessons,
  type Offset,
  type Pace,
} from '#clocks';
import type { Lesson } from '#contract';
import { normalQuantile } from '#units';
import type { LessonBook } from './learn-lessons.js';
import type { RunWorkings } from '../input/workings.js';

const paceTitle: Readonly<Record<Pace, string>> = {
  batter: 'how the batter thickens',
  early: 'the first hours after the pour',
  set: 'how the soap sets',
  glaze: 'how the glaze sets',
  cure: 'how the soap cures',
};

/**
 * What the log has taught, with what it rests on: for each pace one lesson for the workshop at large and one for each
 * recipe that was logged, so that a maker can see where a forecast comes from and have an entry forgotten.
 * @param run its recipes lend their titles; absent: keys do
 */
export function showLessons(book: LessonBook, run?: RunWorkings): Lesson[] {
  return [...book].flatMap(([pace, lessons]) => {
    if (lessons.observations.length === 0) return [];
    const recipes = [...new Set(lessons.observations.map(({ recipe }) => recipe))].sort();
    return [
      shown(pace, null, 'any recipe', lessons.workshop, lessons),
      ...recipes.map((recipe) =>
        shown(pace, recipe, run?.recipes.get(recipe)?.title ?? recipe, lessons.recipe(recipe), lessons),
      ),
    ];
  });
}

function shown(pace: Pace, recipe: string | null, title: string, offset: Offset, lessons: Lessons): Lesson {
  const counted = lessons.observations.filter((each) => recipe === null || each.recipe === recipe);
  const unlearned = Math.hypot(offsetPrior.workshopSigma, offsetPrior.recipeSigma);
  const sd = recipe === null ? Math.hypot(offset.sd, offsetPrior.recipeSigma) : offset.sd;
  const batch = batchSigmaOf(pace);
  return {
    pace,
    recipe,
    title: `${paceTitle[pace]}, ${title}`,
    factor: factorOf(offset.mean, offset.sd),
    before: factorOf(0, unlearned),
    widthShare: Math.hypot(batch, sd) / Math.hypot(batch, unlearned),
    observations: counted.map(({ recipe: of, entries, exact, above, below }) => ({
      recipe: of,
      entries: [...entries],
      ...(exact === undefined ? {} : { exact: Math.exp(exact) }),
      ...(above === undefined ? {} : { above: Math.exp(above) }),
      ...(below === undefined ? {} : { below: Math.exp(below) }),
    })),
  };
}

/** 10th, 50th and 90th percentile of a factor whose logarithm is normal. */
function factorOf(mean: number, sd: number): Lesson['factor'] {
  const at = (p: number): number => Math.exp(mean + sd * normalQuantile(p));
  return { low: at(0.1), likely: at(0.5), high: at(0.9) };
}

/** What a usual batch varies by: that of the pace's first state at the reference point. */
function batchSigmaOf(pace: Pace): number {
  const state = stateIds.find((each) => paceOf[each] === pace);
  if (state === undefined) throw new Error(`no state has the pace ${pace}`);
  return ofTypicalWorkshop(forecast(state, referenceInputs)).sigma;
}
