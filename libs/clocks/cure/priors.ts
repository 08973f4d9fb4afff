/** The 10th and 90th percentile of what is believed before anything is weighed. */
export interface Belief {
  readonly low: number;
  readonly high: number;
}

/**
 * All losses of 8 to 15 % of the fresh mass, of a batch at 33 % lye: common practice, no source. Taken as the 10th
 * and 90th percentile.
 */
export const lossShare: Belief = { low: 0.08, high: 0.15 };

/** Water in the fresh mass of the batch that `lossShare` speaks of: 33 % lye, common practice, no source. */
export const USUAL_WATER_SHARE = 0.2;

/** Water in the fresh mass of the most dilute batch anyone pours; the bound of the loss if no recipe is known. From memory. */
export const MOST_WATER_SHARE = 0.35;

/**
 * “Most of it in the first three weeks”: common practice, no source. With the middle β these ends lose 90 % and
 * 53 % of the whole in that time.
 */
export const tauDays: Belief = { low: 6.5, high: 30 };

/**
 * Between what a plane sheet does at first, √t, and the plain exponential it ends in (J. Crank, The Mathematics of
 * Diffusion, 2nd ed. 1975, section 4.3, from memory). The ends themselves are a judgement: common practice has none.
 */
export const beta: Belief = { low: 0.5, high: 0.9 };

/** Standard deviation of a reading in parts of the mass, if nothing is said of the scales: 2 g on a kilogram. From memory. */
export const READING_NOISE = 0.002;

/** Soap takes up and gives off this much with the room's air from day to day, however good the scales. From memory. */
export const LEAST_NOISE = 0.0002;

/** What is said of the noise counts as much as this many readings. A judgement. */
export const NOISE_READINGS = 6;
