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
  return single.length > 0
    ? single
    : weighIns.flatMap((now, i) => checkAgainstEarlier(weighIns, now, i, options));
}

function tooFew(count: number): Issue {
  return {
    code: 'cure.too-few-weighings',
    path: ['weighIns'],
    value: count,
    accepted: { kind: 'range', low: 2 },
    count,
  };
}

function checkOne({ days, massG }: WeighIn, i: number): Issue[] {
  return [
    ...refuseUnless(days >= 0 && days < Infinity, 'cure.day-out-of-range', ['weighIns', i, 'days'], days),
    ...refuseUnless(massG > 0 && massG < Infinity, 'cure.mass-out-of-range', ['weighIns', i, 'massG'], massG),
  ];
}

function checkOptions({ waterShare = 0.5, scaleSdG = 1 }: CureOptions): Issue[] {
  const isShare = waterShare > 0 && waterShare < 1;
  return [
    ...refuseUnless(isShare, 'cure.water-share-out-of-range', ['waterShare'], waterShare),
    ...refuseUnless(scaleSdG > 0 && scaleSdG < Infinity, 'cure.scale-out-of-range', ['scaleSdG'], scaleSdG),
  ];
}

const accepted = {
  'cure.day-out-of-range': { kind: 'range', low: 0 },
  'cure.mass-out-of-range': { kind: 'range', low: 0, isOpen: true, unit: 'g' },
  'cure.water-share-out-of-range': { kind: 'range', low: 0, high: 1, isOpen: true },
  'cure.scale-out-of-range': { kind: 'range', low: 0, isOpen: true, unit: 'g' },
} as const;

function refuseUnless(
  isFine: boolean,
  code: keyof typeof accepted,
  path: Issue['path'],
  value: number,
): Issue[] {
  return isFine ? [] : [{ code, path, value, accepted: accepted[code] }];
}

function checkAgainstEarlier(
  weighIns: readonly WeighIn[],
  { massG, days }: WeighIn,
  i: number,
  { waterShare }: CureOptions,
): Issue[] {
  const earlier = weighIns.filter((weighIn) => weighIn.days < days).map((weighIn) => weighIn.massG);
  if (earlier.length === 0) return [];
  const told = { path: ['weighIns', i, 'massG'], value: massG, massG, days };
  const mostG = Math.min(...earlier) * (1 + MOST_GAINED);
  if (massG > mostG) {
    const upTo = { kind: 'range', low: 0, high: mostG, unit: 'g' } as const;
    return [{ code: 'cure.mass-gained', ...told, accepted: upTo, mostG }];
  }
  const leastG = Math.max(...earlier) * (1 - (waterShare ?? MOST_WATER_SHARE) - MOST_GAINED);
  if (massG < leastG) {
    const from = { kind: 'range', low: leastG, unit: 'g' } as const;
    return [{ code: 'cure.lost-more-than-water', ...told, accepted: from, leastG }];
  }
  return [];
}
