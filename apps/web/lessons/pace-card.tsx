import { useState, type ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { useLessonsWords } from './lessons-words.js';
import { BandPicture } from './band-picture.js';
import { tempoOf, type Lesson, type PaceLessons } from './lesson-facts.js';
import { Observations } from './observations.js';
import type { JustForgotten } from './undo-note.js';
import { useTitles } from './use-titles.js';

/** One pace of the soap: what was learned of it for each recipe, and what that rests on. */
export function PaceCard({
  group,
  range,
  onForgotten,
}: {
  readonly group: PaceLessons;
  /** Factors at both ends of all pictures on the page, so that they can be compared. */
  readonly range: readonly [number, number];
  readonly onForgotten: (forgotten: JustForgotten) => void;
}): ReactNode {
  const lessons = useLessonsWords();
  const { recipeTitle } = useTitles();
  const [isOpen, setOpen] = useState(false);
  const { pace, workshop, recipes } = group;
  return (
    <section className="card stack pace" aria-labelledby={`pace-${pace}`}>
      <h2 id={`pace-${pace}`}>{lessons.paces[pace]}</h2>
      {recipes.map((lesson) => (
        <Learned key={lesson.recipe} lesson={lesson} title={recipeTitle(lesson.recipe ?? '')} range={range} />
      ))}
      <Learned lesson={workshop} title={lessons.anyRecipe} range={range} />
      <details onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>{lessons.restsOn(workshop.observations.length)}</summary>
        {isOpen && <Observations observations={workshop.observations} onForgotten={onForgotten} />}
      </details>
    </section>
  );
}

/** One lesson as a picture and in words. */
function Learned({
  lesson,
  title,
  range,
}: {
  readonly lesson: Lesson;
  readonly title: string;
  readonly range: readonly [number, number];
}): ReactNode {
  const lessons = useLessonsWords();
  const { share } = useAmounts();
  const { factor, before, widthShare } = lesson;
  const tempo = tempoOf(factor.likely);
  const whole = (value: number): string => share(Math.round(value * 100) / 100);
  const told = (band: Lesson['factor']): string => lessons.factor(whole(band.low), whole(band.high));
  return (
    <div className="learned stack tight">
      <h3>{title}</h3>
      <p className="tempo">{tempo.kind === 'same' ? lessons.same : lessons[tempo.kind](whole(tempo.by))}</p>
      <BandPicture before={before} now={factor} range={range} />
      <dl className="small soft numbers">
        <dt className="sign-before">{lessons.before}</dt>
        <dd>{told(before)}</dd>
        <dt className="sign-now">{lessons.after}</dt>
        <dd>{told(factor)}</dd>
      </dl>
      <p className="small soft">
        {widthShare < 0.995 ? lessons.width(whole(1 - widthShare)) : lessons.wider}
      </p>
    </div>
  );
}
