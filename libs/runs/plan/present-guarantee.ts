import type { Guarantee } from '#contract';
import {
  guarantee,
  withoutPreferences,
  type Length,
  type Problem,
  type Requirement,
  type Schedule,
} from '#planner';
import type { AssessedRun } from '../assessed-run.js';
import { describeConflict } from './describe-conflict.js';
import type { Network } from './network-references.js';
import { OF_RECIPE } from './shares-of.js';
import { describeOrder, type HandOver } from './describe-order.js';

/** Bands as clocks tell them: from the 10th to the 90th percentile. */
const CERTAINTY = 0.9;
const BAND_PERCENT = 80;

/**
 * Whether a plan gives sound pieces by their day whatever the soap does within its bands, or why not. What is only nice to
 * have is left out, as it is from the odds beside it.
 * @returns null when nothing is left to do
 */
export function presentGuarantee(
  network: Network,
  schedule: Schedule,
  assessedRuns: readonly AssessedRun[],
): Guarantee | null {
  const isOpen = assessedRuns.some(({ progress }) =>
    progress.attempts.some(({ status }) => status === 'open'),
  );
  if (!isOpen) return null;
  const required = withoutPreferences(network.problem);
  const found = guarantee(alikeByRecipe(required), schedule, CERTAINTY);
  if (found.holds) return { holds: true, bandPercent: BAND_PERCENT, reasons: [] };
  const handOvers: HandOver[] = [];
  const others: Requirement[] = [];
  for (const each of found.requirements) {
    if (each.kind === 'resource' && each.stages.length > 1) handOvers.push(each);
    else others.push(each);
  }
  const reasons = [...describeConflict(others, network), ...describeOrder(handOvers, network.references)];
  return { holds: false, bandPercent: BAND_PERCENT, reasons };
}

/**
 * Batches of one recipe in one run as if they were slow or quick as one, where nothing was seen of them yet: bands tell of what is not known
 * of workshop and recipe first, and how far the luck of two pours parts them is left to the odds.
 */
function alikeByRecipe(problem: Problem): Problem {
  const alike = (length: Length): Length => {
    if (length.kind !== 'uncertain' || length.draw in problem.draws) return length;
    const recipe = problem.shares?.[length.draw]?.find(({ of }) => of.startsWith(OF_RECIPE));
    const [run = ''] = length.draw.split('/');
    return recipe === undefined ? length : { ...length, draw: `${run}/${recipe.of}` };
  };
  const lags = problem.lags.map(({ atLeast, atMost, ...lag }) => ({
    ...lag,
    ...(atLeast && { atLeast: alike(atLeast) }),
    ...(atMost && { atMost: alike(atMost) }),
  }));
  return { ...problem, lags };
}
