import type { LatestStartDocument } from '#contract';
import type { Texts } from '#words';
import { printPlan } from './print-plan.js';
import { heading, percentText, sentences, wrap } from './text-layout.js';

/** The latest start as text, or why no start will do; then the plan from there. */
export function printLatestStart(answer: LatestStartDocument, texts: Texts): string {
  const asked = `Cured by ${answer.readyBy} with odds of ${percentText(answer.wantedOdds)}`;
  return `${heading(asked)}\n${wrap(sentences(answer.why, texts), 0, 100)}\n\n${printPlan(answer.plan, texts)}`;
}
