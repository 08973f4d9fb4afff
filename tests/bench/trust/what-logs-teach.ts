import { forecast, learn, referenceInputs, withOffset, band, type Reason } from '#clocks';
import { normalCdf, seededRandom } from '#units';
import { atMost, median, watched, type Figure } from '../../support/figure.js';
import { habits } from './habits.js';
import { simulateMaker, type Making } from './simulated-maker.js';

/** High over low end of the band that the first release told a maker whose batches vary by 0.1, after a hundred of them. */
const FIRST_RELEASE = 2.23;
/** What the band may have of that one's, in % of the logarithm. */
const STEADY_BAR = 60;
const DAY = 1440;

/** What a steady maker's log comes to, and three lots that cured within three days of each other. */
export function whatLogsTeach(making: Making, makers: number, seed: number): Figure[] {
  return [...steadyFigures(making, makers, seed), ...cureFigures()];
}

/**
 * Makers whose batches vary by 0.1 and who log what is not ready yet; the width is that of logarithms. Where the oracle's band is wider
 * than the bar, so must any honest one be.
 */
function steadyFigures(making: Making, makers: number, seed: number): Figure[] {
  return (['not yet and done', 'twice a day'] as const).flatMap((name) => {
    const habit = habits[name];
    if (habit === undefined) throw new Error(`no habit ${name}`);
    const random = seededRandom(seed * 7919);
    const judged = Array.from({ length: makers }, () => {
      const [after30] = simulateMaker(making, { pace: 1, batchSigma: 0.1, habit }, [30], random);
      if (after30 === undefined) throw new Error('nothing judged');
      return after30;
    });
    const share = (widths: readonly number[]): number =>
      (100 * median(widths.map(Math.log))) / Math.log(FIRST_RELEASE);
    const [known, learned] = [
      share(judged.map((each) => each.oracle.width)),
      share(judged.map((each) => each.oracleOfBoth.width)),
    ];
    const of = `steady maker, ${name}, 30 runs: width over the first release's, in logarithms`;
    const reach = Math.min(known, learned) > STEADY_BAR ? '; bar out of reach' : '';
    return [
      atMost(`${of}${reach}`, share(judged.map(({ width }) => width)), '%', STEADY_BAR),
      watched(`${of}, of who knows all but the pace`, known, '%', 'lower'),
      watched(`${of}, of who must learn the spread`, learned, '%', 'lower'),
    ];
  });
}

/** Lots that the log says were cured after 31, 32 and 33 days: the next one's band, and how often it takes more than 48. */
function cureFigures(): Figure[] {
  const rules = forecast('cured', referenceInputs);
  const seen = [31, 32, 33].map((days, i) => ({
    ...{ recipe: 'base', exact: Math.log((days * DAY) / rules.medianMin), day: 20_000 + 60 * i },
    ...{ sigma: rules.batchSigma, doubt: rules.ruleSigma, looks: 0, missed: 0, entries: [] },
  }));
  const { recipe, spread } = learn(seen);
  const reason: Reason = {
    ...{ rule: 'lesson', input: 'log', value: 3, usual: 0, factor: 1 },
    evidence: { kind: 'bench log' },
  };
  const next = withOffset(rules, { ...recipe('base'), spread, reason });
  const { low, likely, high } = band(next);
  const late = 1 - normalCdf(Math.log((48 * DAY) / next.medianMin) / next.sigma);
  return [
    watched('cured in 31, 32 and 33 days: next one from', low / DAY, 'days', 'higher'),
    watched('cured in 31, 32 and 33 days: next one likely', likely / DAY, 'days', 'lower'),
    watched('cured in 31, 32 and 33 days: next one to', high / DAY, 'days', 'lower'),
    atMost('cured in 31, 32 and 33 days: not cured by day 48', 100 * late, '%', 7),
  ];
}
