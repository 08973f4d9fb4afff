import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { lensPath } from '../look/lens.js';
import { useLessonsWords } from './lessons-words.js';

/** Half the width of each band in the picture. Only a drawing: how fast they narrow depends on the log. */
const bands = [110, 74, 46];

/** What lessons are and where they come from, while there are none. */
export function EmptyLessons(): ReactNode {
  const lessons = useLessonsWords();
  return (
    <div className="card stack empty-lessons">
      <h2>{lessons.empty}</h2>
      <svg viewBox="0 0 240 150" role="img" aria-label={lessons.emptyPicture} className="narrowing">
        {bands.map((half, i) => (
          <path
            key={half}
            className={i === 0 ? 'before' : 'now-band'}
            d={lensPath(120 - half, 120 + i * 5, 120 + half * 0.9, 26 + i * 50, 12 + i * 4)}
          />
        ))}
      </svg>
      <ol className="steps soft small">
        {lessons.emptySteps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>{lessons.emptyHow}</p>
      <p className="soft">{lessons.emptyNext}</p>
      <p>
        <Link className="button" to="/">
          {lessons.toNow}
        </Link>
      </p>
    </div>
  );
}
