import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { useWords } from '../../words/words.js';
import type { CheckedGuide } from './check-guide.js';
import { steps, type Step } from './guide-draft.js';

/** Where one is, and the way to the other steps. */
export function StepsBar({
  step,
  issues,
}: {
  readonly step: Step;
  readonly issues: CheckedGuide['issues'];
}): ReactNode {
  const { guide } = useWords().plan;
  return (
    <nav aria-label={guide.step(steps.indexOf(step) + 1, steps.length)}>
      <ol className="steps">
        {steps.map((each, i) => (
          <li key={each}>
            <Link to={`?step=${each}`} aria-current={each === step ? 'step' : undefined}>
              {issues[each].length === 0 && i < steps.indexOf(step) ? '✓ ' : `${String(i + 1)}. `}
              {guide.steps[each]}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
