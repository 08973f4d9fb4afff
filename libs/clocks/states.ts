import type { Evidence } from '#units';

/** A change of state of one batch that a stage can wait for or must come before. */
export type StateId =
  | 'lye-cool'
  | 'lye-keeps-until'
  | 'fats-cool'
  | 'emulsion'
  | 'light-trace'
  | 'medium-trace'
  | 'thick-trace'
  | 'stiff'
  | 'spoonable-until'
  | 'holds-layer'
  | 'skinned'
  | 'takes-decor-until'
  | 'bonds-until'
  | 'ash-safe'
  | 'patchable'
  | 'firm'
  | 'pliable-until'
  | 'handled'
  | 'cuttable'
  | 'cuttable-until'
  | 'coat-tacky-until'
  | 'coat-turnable'
  | 'piping-skinned'
  | 'piping-firm'
  | 'piping-turnable'
  | 'glaze-set'
  | 'glaze-turnable'
  | 'melt-firm'
  | 'takes-coat-until'
  | 'takes-piping-until'
  | 'takes-glaze-until'
  | 'embeds-until'
  | 'usable'
  | 'cured'
  | 'best';

/** Which of a batch's clocks tells the state; each starts at another moment and runs at its own pace. */
export type ClockName = 'lye' | 'fats' | 'batter' | 'paste' | 'set' | 'cure';

/** What the clocks know of a state before any rule is applied. */
export interface State {
  readonly clock: ClockName;
  /** Median at the reference point (`referenceInputs`), in minutes. */
  readonly baseMin: number;
  /** Standard deviation of the logarithm at the reference point. */
  readonly sigma: number;
  readonly evidence: Evidence;
}

const HOUR = 60;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;

const commonPractice: Evidence = { kind: 'common practice' };
const fromMemory: Evidence = { kind: 'from memory' };

/**
 * Every state with its base at the reference point.
 *
 * Lye and fats cool by a balance of their own (`cooling`), in which their mass counts; their bases here are what it comes to for
 * some hundred grams. Covered lye keeps for weeks, and draws carbonate from the air where it is not.
 *
 * `cuttable` may come before `firm`: a lined block is lifted out by its paper and needs only to stand, while
 * a small piece is pushed out of its cavity and needs to bear the thumb. `handled` comes after `pliable-until`:
 * what can still be patched still takes a mark. Soap that dries shrinks away from what is put onto it later: piping pops
 * off first, then a dipped coat, then a glaze of melt-and-pour, which wetting with alcohol helps to hold; so these count
 * from the unmoulding, when the drying begins. A piece that is set into fresh batter bonds for longer than that, as the
 * batter wets it; then it only sits loose. What is cast from melt-and-pour leaves its mould once it is cool all through, which a
 * balance of its own works out (`cooling`). `usable` speaks of the pace only; whether free alkali is left is
 * for a test of the soap to say.
 */
export const states: Readonly<Record<StateId, State>> = {
  'lye-cool': {
    clock: 'lye',
    baseMin: 90,
    sigma: 0.35,
    evidence: commonPractice,
  },
  'lye-keeps-until': {
    clock: 'lye',
    baseMin: 14 * DAY,
    sigma: 0.4,
    evidence: commonPractice,
  },
  'fats-cool': {
    clock: 'fats',
    baseMin: 60,
    sigma: 0.35,
    evidence: commonPractice,
  },
  emulsion: {
    clock: 'batter',
    baseMin: 2,
    sigma: 0.35,
    evidence: fromMemory,
  },
  'light-trace': {
    clock: 'batter',
    baseMin: 4,
    sigma: 0.35,
    evidence: commonPractice,
  },
  'medium-trace': {
    clock: 'batter',
    baseMin: 9,
    sigma: 0.35,
    evidence: commonPractice,
  },
  'thick-trace': {
    clock: 'batter',
    baseMin: 16,
    sigma: 0.35,
    evidence: commonPractice,
  },
  stiff: {
    clock: 'batter',
    baseMin: 28,
    sigma: 0.35,
    evidence: fromMemory,
  },
  'spoonable-until': {
    clock: 'paste',
    baseMin: 40,
    sigma: 0.35,
    evidence: commonPractice,
  },
  'holds-layer': {
    clock: 'set',
    baseMin: 35,
    sigma: 0.35,
    evidence: fromMemory,
  },
  skinned: {
    clock: 'set',
    baseMin: 90,
    sigma: 0.35,
    evidence: fromMemory,
  },
  'takes-decor-until': {
    clock: 'set',
    baseMin: 90,
    sigma: 0.35,
    evidence: fromMemory,
  },
  'bonds-until': {
    clock: 'set',
    baseMin: 6 * HOUR,
    sigma: 0.3,
    evidence: fromMemory,
  },
  'ash-safe': {
    clock: 'set',
    baseMin: 72 * HOUR,
    sigma: 0.4,
    evidence: commonPractice,
  },
  patchable: {
    clock: 'set',
    baseMin: 30 * HOUR,
    sigma: 0.25,
    evidence: fromMemory,
  },
  firm: {
    clock: 'set',
    baseMin: 60 * HOUR,
    sigma: 0.25,
    evidence: commonPractice,
  },
  'pliable-until': {
    clock: 'set',
    baseMin: 90 * HOUR,
    sigma: 0.3,
    evidence: fromMemory,
  },
  handled: {
    clock: 'set',
    baseMin: 96 * HOUR,
    sigma: 0.3,
    evidence: fromMemory,
  },
  cuttable: {
    clock: 'set',
    baseMin: 48 * HOUR,
    sigma: 0.25,
    evidence: commonPractice,
  },
  'cuttable-until': {
    clock: 'set',
    baseMin: 150 * HOUR,
    sigma: 0.35,
    evidence: fromMemory,
  },
  'coat-tacky-until': {
    clock: 'set',
    baseMin: 3 * HOUR,
    sigma: 0.3,
    evidence: fromMemory,
  },
  'coat-turnable': {
    clock: 'set',
    baseMin: 10 * HOUR,
    sigma: 0.25,
    evidence: commonPractice,
  },
  'piping-skinned': {
    clock: 'set',
    baseMin: 35,
    sigma: 0.35,
    evidence: fromMemory,
  },
  'piping-firm': {
    clock: 'set',
    baseMin: 12 * HOUR,
    sigma: 0.3,
    evidence: fromMemory,
  },
  'piping-turnable': {
    clock: 'set',
    baseMin: 18 * HOUR,
    sigma: 0.3,
    evidence: fromMemory,
  },
  'glaze-set': {
    clock: 'set',
    baseMin: 30,
    sigma: 0.3,
    evidence: fromMemory,
  },
  'glaze-turnable': {
    clock: 'set',
    baseMin: 2 * HOUR,
    sigma: 0.3,
    evidence: fromMemory,
  },
  'melt-firm': {
    clock: 'set',
    baseMin: 70,
    sigma: 0.4,
    evidence: commonPractice,
  },
  'takes-coat-until': {
    clock: 'cure',
    baseMin: 4 * DAY,
    sigma: 0.4,
    evidence: commonPractice,
  },
  'takes-piping-until': {
    clock: 'cure',
    baseMin: 3 * DAY,
    sigma: 0.4,
    evidence: commonPractice,
  },
  'takes-glaze-until': {
    clock: 'cure',
    baseMin: 7 * DAY,
    sigma: 0.4,
    evidence: fromMemory,
  },
  'embeds-until': {
    clock: 'cure',
    baseMin: 21 * DAY,
    sigma: 0.5,
    evidence: commonPractice,
  },
  usable: {
    clock: 'cure',
    baseMin: 2 * WEEK,
    sigma: 0.25,
    evidence: fromMemory,
  },
  cured: {
    clock: 'cure',
    baseMin: 5 * WEEK,
    sigma: 0.2,
    evidence: commonPractice,
  },
  best: {
    clock: 'cure',
    baseMin: 8 * WEEK,
    sigma: 0.25,
    evidence: fromMemory,
  },
};

/** Every state, in the order in which they are listed. */
export const stateIds = Object.keys(states) as readonly StateId[];
