import type { Evidence } from '#units';
import { factorAt } from './engine/factor-at.js';
import type { ClockInputs, Measure } from './inputs.js';
import type { FloorId } from './rule.js';
import type { StateId } from './states.js';

/** What soap in a mould cannot be before, however fast its recipe is. */
export interface Floor {
  readonly id: FloorId;
  readonly reads: Measure;
  /** What is read, and the minutes from the pour before which the soap cannot be cut. */
  readonly table: readonly (readonly [value: number, min: number])[];
  readonly evidence: Evidence;
}

/**
 * Soap is not taken out of its mould or cut before it has cooled, nor in the first hour: a salt bar is cut after an hour or
 * more, and in full gel soap is a hot jelly for some hours. Common practice, no source.
 */
export const floors: readonly Floor[] = [
  {
    id: 'hot-soap',
    reads: 'hotHours',
    table: [
      [0, 60],
      [1, 60],
      [400, 400 * 60],
    ],
    evidence: { kind: 'common practice' },
  },
  {
    id: 'gel-cools',
    reads: 'gelPercent',
    table: [
      [0, 60],
      [100, 240],
    ],
    evidence: { kind: 'common practice' },
  },
];

/**
 * How the floor of a state compares with that of cutting. They keep the order in which soap passes through its states; what closes
 * a window comes well after what opens it. Our own judgement.
 */
export const floorShares: Readonly<Partial<Record<StateId, number>>> = {
  patchable: 0.75,
  cuttable: 1,
  firm: 1.1,
  'pliable-until': 1.6,
  handled: 1.8,
  'cuttable-until': 1.75,
};

/** Within this factor of its floor a time is bent towards it, so that it has no corner there. */
const BEND = Math.log(2);

/** By how much a floor lifts a time, and which. */
export interface Lift {
  readonly floor: Floor;
  readonly factor: number;
}

/**
 * What a likely time is multiplied by so that it keeps to its floor. With d = ln (time / floor) the time is left alone from d = ln 2
 * on, is the floor below −ln 2, and between them ln lifted = max(ln time, ln floor) + (ln 2 − |d|)² / (4 ln 2): one smooth curve that
 * never falls as either rises.
 * @param medianMin before the floor
 * @returns undefined where nothing is lifted
 */
export function liftOf(state: StateId, medianMin: number, inputs: ClockInputs): Lift | undefined {
  const share = floorShares[state];
  if (share === undefined) return undefined;
  let [highest, highestMin] = [floors[0], 0];
  for (const floor of floors) {
    // What was cooked in the pot has been through its gel; how hot it still is counts.
    if (floor.id === 'gel-cools' && inputs.process !== 'cold') continue;
    const min = share * factorAt(floor.table, inputs[floor.reads]);
    if (min > highestMin) [highest, highestMin] = [floor, min];
  }
  const above = Math.log(medianMin / highestMin);
  if (highest === undefined || above >= BEND) return undefined;
  const bent = above <= -BEND ? 0 : (BEND - Math.abs(above)) ** 2 / (4 * BEND);
  return { floor: highest, factor: Math.exp(Math.max(0, -above) + bent) };
}
