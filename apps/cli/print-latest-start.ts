import type { LatestStartDocument } from '#contract';
import type { Texts } from '#words';
import { printPlan } from './print-plan.js';
import { heading, sentences, wrap } from './text-layout.js';
import { printed } from './words/index.js';

/** The latest start as text, or why no start will do; then the plan from there. */
export function printLatestStart(answer: LatestStartDocument, texts: Texts): string {
  const day = texts.calendarDay(answer.readyBy);
  const asked = printed[texts.language].plan.latestStart(day, texts.share(answer.wantedOdds));
  return `${heading(asked)}\n${wrap(sentences(answer.why, texts), 0, 100)}\n\n${printPlan(answer.plan, texts)}`;
}
