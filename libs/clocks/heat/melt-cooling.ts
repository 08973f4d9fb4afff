import type { Cooling } from './cooling.js';

export interface MeltInputs {
  /** Of melted base in one cavity, mL; above 0. */
  readonly volumeMl: number;
  readonly roomTemperatureC: number;
}

/** Poured at 55 to 65 °C, and let alone until it is cool to the touch all through. Common practice, no source. */
const POURED_C = 60;
const COOL_C = 30;
/** Closer to the room than this nobody waits for it: the last degrees take hours. */
const CLOSE_TO_ROOM_C = 3;

/**
 * Base of 30 parts water, 30 glycerol and propylene glycol, 30 soap and 10 sugar, as labels list them, at specific heats of 4.18, 2.43,
 * 1.9 and 1.24 J/(g K): the first two and the last from memory of the CRC Handbook, that of soap from memory. What it gives
 * off as it gels, some 30 J/g (our own judgement), is spread over the 30 K in which it cools.
 */
const HEAT_CAPACITY_J_PER_G_K = 0.3 * 4.18 + 0.3 * 2.43 + 0.3 * 1.9 + 0.1 * 1.24 + 30 / 30;
const DENSITY_G_PER_ML = 1.05;
/** W/(m K): between glycerol, 0.29, and water, 0.6; from memory. */
const CONDUCTIVITY = 0.35;
/** W/(m² K), in still air: some 6 by radiation and 4 by convection, less where it stands on the bench; from memory. */
const TRANSFER = 9;

/**
 * How a cavity of melted base cools, as its middle does, which is the last: the first term of the series for a sphere in
 * air (Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5; from memory), for the sphere that lies in a cube of the
 * volume and so has as much surface for its volume.
 *
 *     θ = C exp(−ζ² α t / r²)    1 − ζ cot ζ = Bi    C = 4 (sin ζ − ζ cos ζ) / (2 ζ − sin 2ζ)    Bi = h r / k
 *
 * A flat cavity is quicker, and a tray of many close together, or a lid, is slower, by a third or so each: that is what
 * its spread is for.
 * @throws RangeError for a volume that is none
 */
export function meltCooling({ volumeMl, roomTemperatureC }: MeltInputs): Cooling {
  if (!(volumeMl > 0 && volumeMl < Infinity)) throw new RangeError(`${String(volumeMl)} mL cannot cool`);
  const radiusM = Math.cbrt(volumeMl * 1e-6) / 2;
  const { zeta, first } = sphereTerm((TRANSFER * radiusM) / CONDUCTIVITY);
  const diffusivity = CONDUCTIVITY / (DENSITY_G_PER_ML * HEAT_CAPACITY_J_PER_G_K * 1e6);
  return {
    // The middle stays hot for a while: as if it had begun hotter and cooled from the start.
    startC: roomTemperatureC + first * (POURED_C - roomTemperatureC),
    targetC: Math.max(COOL_C, roomTemperatureC + CLOSE_TO_ROOM_C),
    aroundC: roomTemperatureC,
    inBath: false,
    timeConstantMin: radiusM ** 2 / (diffusivity * zeta ** 2) / 60,
  };
}

/** The first root ζ of 1 − ζ cot ζ = Bi, and the coefficient that goes with it. @param biot above 0 */
export function sphereTerm(biot: number): { readonly zeta: number; readonly first: number } {
  let [low, high] = [0, Math.PI];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (1 - middle / Math.tan(middle) < biot) low = middle;
    else high = middle;
  }
  const zeta = (low + high) / 2;
  const first = (4 * (Math.sin(zeta) - zeta * Math.cos(zeta))) / (2 * zeta - Math.sin(2 * zeta));
  return { zeta, first };
}
