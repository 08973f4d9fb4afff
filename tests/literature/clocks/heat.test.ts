import { describe, expect, it } from 'vitest';
import { lyeCooling } from '../../../libs/clocks/heat/cooling.js';
import { freshLyeC, lyeSpecificHeat } from '../../../libs/clocks/heat/lye-heat.js';
import { pieceOf, type PieceHeatInputs } from '../../../libs/clocks/heat/piece-heat.js';
import { warm, type Warming } from '../../../libs/clocks/heat/warming.js';

/**
 * Enthalpy of NaOH solutions, kJ/kg: J. Olsson, Å. Jernqvist and G. Aly, Thermophysical Properties of Aqueous NaOH–H2O Solutions at
 * High Concentrations, Int. J. Thermophys. 18 (1997) 779, with the coefficients of its correlation for h(w, t), w being the share of
 * water by mass. As other programs hold them; the paper itself was not read.
 */
const k = [
  1288.4485, -0.49649131, -4387.8908, -4.0915144, 4938.2298, 7.2887292, -1841.189, -3.0202651,
] as const;
const perK = [
  2.3087919, -9.0004252, 167.59914, -1051.6368, 3394.3378, -6115.0986, 6220.8249, -3348.8098, 743.87432,
];
const perK2 = [0.0230286, -0.37866056, 2.4529593, -8.2693542, 15.728833, -16.944427, 9.6254192, -2.2410628];
const perK3 = [
  -8.5131313e-5, 136.52823e-5, -875.68741e-5, 2920.0398e-5, -5488.2983e-5, 5841.8034e-5, -3278.7483e-5,
  754.45993e-5,
];
const series = (factors: readonly number[], x: number): number =>
  factors.reduceRight((sum, factor) => sum * x + factor, 0);

function enthalpy(naohShare: number, tempC: number): number {
  const w = 1 - naohShare;
  const atZero = series([k[0], k[2], k[4], k[6]], w) / series([1, k[1], k[3], k[5], k[7]], w);
  return atZero + series(perK, w) * tempC + series(perK2, w) * tempC ** 2 + series(perK3, w) * tempC ** 3;
}

/** Of solid NaOH on the same scale: what it gives off in endless water at 25 °C is 44.51 kJ/mol (CRC Handbook; from memory). */
function solidEnthalpy(tempC: number): number {
  const dilute = 0.02;
  const dissolved = (enthalpy(dilute, 25) - (1 - dilute) * enthalpy(0, 25)) / dilute;
  // 59.66 J/(mol K), or 1.49 J/(g K), by the same handbooks.
  return dissolved + 44_510 / 39.997 + 1.49 * (tempC - 25);
}

function adiabaticC(naohShare: number, startC: number): number {
  const before = naohShare * solidEnthalpy(startC) + (1 - naohShare) * enthalpy(0, startC);
  let [low, high] = [startC, 200];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (enthalpy(naohShare, middle) < before) low = middle;
    else high = middle;
  }
  return low;
}

describe('lye', () => {
  /** Steam tables: 104.8 kJ/kg at 25 °C and 419.1 at 100 °C. */
  it('is told by a correlation that knows water', () => {
    expect(Math.abs(enthalpy(0, 25) - 104.8)).toBeLessThan(0.5);
    expect(Math.abs(enthalpy(0, 100) - 419.1)).toBeLessThan(1);
  });

  /** Above 43 % the code goes by a point of this very correlation. */
  it.each([20, 25, 30, 33, 36, 40, 45, 50])(
    'of %d % ends as hot as its published enthalpy says, to within 2 K, if it loses nothing',
    (percent) => {
      const published = adiabaticC(percent / 100, 20);
      expect(Math.abs(freshLyeC(percent, 20, 0, 0) - published)).toBeLessThan(2);
    },
  );

  it.each([25, 33, 40, 50])('of %d % has the published specific heat to within 3 %', (percent) => {
    const published = (enthalpy(percent / 100, 70) - enthalpy(percent / 100, 30)) / 40;
    expect(Math.abs(lyeSpecificHeat(percent) / published - 1)).toBeLessThan(0.03);
  });

  /** Makers measure 80 to 95 °C in a jug of a third alkali stirred into tap water. Common practice, no source. */
  it('is measured as warm as makers find it', () => {
    const { startC } = lyeCooling({
      ...{ massG: 400, lyePercent: 33, batterTemperatureC: 38, roomTemperatureC: 18 },
    });
    expect(startC).toBeGreaterThan(80);
    expect(startC).toBeLessThan(95);
  });
});

/**
 * K. M. Dunn, Time and Temperature (Handcrafted soap column, 2018): soap of 39 % olive, 28 % coconut, 28 % palm and 5 % castor oil, mixed at
 * five temperatures and measured until it was cool. With lye of 33 % it turns to gel at 71 °C, with 40 % at 87 °C. Of the first,
 * those that began at 40 and 60 °C never got there; that of 65 °C did, and climbed well above; two that began hotter than gel were at
 * their hottest within minutes. Of the second all got somewhat hotter, and of the first three none to gel. How much soap it was is
 * not told: so there has to be a size of cup for which all of that comes out, and these figures were not used for any constant but that at
 * which soap gels.
 */
describe('the measured warming of soap', () => {
  const cup = (volumeMl: number, lyePercent: number, fatsShare: number): PieceHeatInputs => ({
    ...{ volumeMl, densityGPerMl: 1.03, mould: 'rigid-plastic', kept: 'open', pace: 1, sugarPercent: 0 },
    ...{ batterTemperatureC: 40, roomTemperatureC: 22 },
    make: { fatsShare, lyeShare: 1 - fatsShare, lyePercent, kohSharePercent: 0 },
  });
  // 144 g of NaOH for a kilogram of fats: 436 g of lye of 33 %, 360 g of 40 %.
  const medium = (volumeMl: number) => cup(volumeMl, 33, 1000 / 1436);
  const dry = (volumeMl: number) => cup(volumeMl, 40, 1000 / 1360);
  const starts = [40, 60, 65, 80, 95] as const;
  type Course = Record<(typeof starts)[number], Warming>;
  const courseOf = (inputs: PieceHeatInputs): Course =>
    Object.fromEntries(
      starts.map((startC) => [startC, warm({ ...pieceOf(inputs), startC })]),
    ) as unknown as Course;
  const hottest = ({ highestC }: Warming): number => highestC[0] ?? NaN;

  it('is met in all that was told of it by a cup of some size', () => {
    const sizes = [50, 75, 100, 125, 150, 200, 250, 300, 400].filter((volumeMl) => {
      const [wet, strong] = [courseOf(medium(volumeMl)), courseOf(dry(volumeMl))];
      return (
        hottest(wet[40]) < 71 &&
        hottest(wet[60]) < 71 &&
        hottest(wet[65]) > 75 &&
        [wet[80], wet[95]].every(({ hottestMin }) => hottestMin <= 15) &&
        [40, 60, 65].every((startC) => hottest(strong[startC as 40]) < 87) &&
        starts.every((startC) => hottest(strong[startC]) >= hottest(wet[startC]))
      );
    });
    expect(sizes).not.toEqual([]);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(75);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(300);
  });

  it('has the measured temperatures of gel within its doubt of 5 K', () => {
    expect(Math.abs(pieceOf(medium(100)).gelC - 71)).toBeLessThanOrEqual(5);
    expect(Math.abs(pieceOf(dry(100)).gelC - 87)).toBeLessThanOrEqual(5);
  });

  /** The same column: at very high temperatures oil is soap in as little as five minutes. */
  it('is over in minutes where it begins near boiling', () => {
    expect(courseOf(medium(1000))[95].hottestMin).toBeLessThan(10);
  });
});
