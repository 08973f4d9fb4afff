import type { Issue } from '#units';
import { MOST_WATER_SHARE } from './priors.js';
import type { WeighIn } from './weigh-in.js';

/** What is known besides the weighings. */
export interface CureOptions {
  /** Water in the fresh mass, from the recipe, above 0 and below 1: the most that can be lost. */
  readonly waterShare?: number;
  /** Standard deviation of a reading, scales and handling, above 0, g. Absent: 0.2 % of the mass. */
  readonly scaleSdG?: number;
}

/** Damp air and scales account for less; more is another set of pieces. */
const MOST_GAINED = 0.03;

/**
 * Refuses weighings that cannot be of one lot that dries.
 *
 * @returns one issue per offence, empty when all is well:
 *   `cure.too-few-weighings` (fewer than 2), `cure.day-out-of-range` (negative or no number),
 *   `cure.mass-out-of-range` (not above 0), `cure.water-share-out-of-range`, `cure.scale-out-of-range`,
 *   `cure.mass-gained` (over 3 % above the lightest of an earlier day),
 *   `cure.lost-more-than-water` (the water share, 35 % if not given, and 3 % more)
 */
export function checkWeighIns(weighIns: readonly WeighIn[], options: CureOptions): Issue[] {
  const single = [
    ...(weighIns.length < 2 ? [tooFew(weighIns.length)] : []),
    ...weighIns.flatMap(checkOne),
    ...checkOptions(options),
  ];
  // Comparing values already refused would only repeat the complaint.
  return single.length > 0 ? single : weighIns.flatMap((_, i) => checkAgainstEarlier(weighIns, i, options));
}

function tooFew(count: number): Issue {
  return {
    code: 'cure.too-few-weighings',
    path: ['weighIns'],
    message: `There are ${String(count)} weighings; accepted: 2 or more of the same pieces.`,
    value: count,
    accepted: '2 or more',
  };
}

function checkOne({ days, massG }: WeighIn, i: number): Issue[] {
  return [
    ...(days >= 0 && days < Infinity
      ? []
      : [
          refused(
            'cure.day-out-of-range',
            ['weighIns', i, 'days'],
            'day of weighing',
            days,
            '0 days or more',
          ),
        ]),
    ...(massG > 0 && massG < Infinity
      ? []
      : [refused('cure.mass-out-of-range', ['weighIns', i, 'massG'], 'mass weighed', massG, 'above 0 g')]),
  ];
}

function checkOptions({ waterShare = 0.5, scaleSdG = 1 }: CureOptions): Issue[] {
  return [
    ...(waterShare > 0 && waterShare < 1
      ? []
      : [
          refused(
            'cure.water-share-out-of-range',
            ['waterShare'],
            'water share of the fresh mass',
            waterShare,
            'above 0 and below 1',
          ),
        ]),
    ...(scaleSdG > 0 && scaleSdG < Infinity
      ? []
      : [
          refused(
            'cure.scale-out-of-range',
            ['scaleSdG'],
            'standard deviation of the scales',
            scaleSdG,
            'above 0 g',
          ),
        ]),
  ];
}

function refused(code: string, path: Issue['path'], title: string, value: number, accepted: string): Issue {
  return { code, path, message: `The ${title} is ${String(value)}; accepted: ${accepted}.`, value, accepted };
}

function checkAgainstEarlier(weighIns: readonly WeighIn[], i: number, { waterShare }: CureOptions): Issue[] {
  const now = weighIns[i];
  if (now === undefined) return [];
  const earlier = weighIns.filter(({ days }) => days < now.days).map(({ massG }) => massG);
  if (earlier.length === 0) return [];
  const path = ['weighIns', i, 'massG'];
  const most = Math.min(...earlier) * (1 + MOST_GAINED);
  if (now.massG > most) {
    const accepted = `up to ${most.toFixed(1)} g`;
    const message = `${gramsOn(now)} is over 3 % more than an earlier weighing; accepted: ${accepted}. Damp air, or not the same pieces?`;
    return [{ code: 'cure.mass-gained', path, message, value: now.massG, accepted }];
  }
  const least = Math.max(...earlier) * (1 - (waterShare ?? MOST_WATER_SHARE) - MOST_GAINED);
  if (now.massG < least) {
    const accepted = `${least.toFixed(1)} g or more`;
    const message = `${gramsOn(now)} is less than an earlier weighing without all its water; accepted: ${accepted}. Not the same pieces?`;
    return [{ code: 'cure.lost-more-than-water', path, message, value: now.massG, accepted }];
  }
  return [];
}

function gramsOn({ days, massG }: WeighIn): string {
  return `The mass of ${String(massG)} g on day ${String(days)}`;
}
