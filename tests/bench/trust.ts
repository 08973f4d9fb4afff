import { loadRunFile } from '../support/run-files.js';
import { atLeast, atMost, watched, type Figure } from '../support/figure.js';
import { seededRandom } from '#units';
import { habits } from './trust/habits.js';
import { judgeCell, type Bar, type Cell, type Estimate, type JudgedCell } from './trust/judge-cells.js';
import { otherMakers, type OtherMaker } from './trust/other-habits.js';
import { simulateMaker, type Judged, type Making } from './trust/simulated-maker.js';
import { sameRecipe } from './trust/same-recipe.js';
import { whatLogsTeach } from './trust/what-logs-teach.js';

const AFTER = [3, 10, 30, 100] as const;
const PACES = [0.67, 1, 1.5, 2];
const BATCH_SIGMAS = [0.1, 0.25, 0.4];

/**
 * Can forecasts be trusted by people as they are? Makers with habits of looking and logging, slow or fast, steady or not,
 * make the same piece again and again; after some runs the next batch is held against the forecast. What the clocks assume
 * of logs is not what draws them. A table tells of each cell, by pace and spread from batch to batch, how the forecast did, how two oracles
 * did, and whether the bar holds; figures tell the worst of each habit. One oracle knows all but the pace, the other must learn the spread from batch
 * to batch as well.
 * @param args `--makers N` of each kind (30), `--seed N` (1), `--habit NAME` for one alone, `none` for what is not told by habit, `main` or
 *   `others` for those of either list
 */
export function figures(args: readonly string[] = []): Figure[] {
  const makers = Number(after(args, '--makers') ?? 30);
  const seed = Number(after(args, '--seed') ?? 1);
  console.log(`Seed ${String(seed)}, ${String(makers)} makers of each kind. Intervals are of 99 %.`);
  const making = theMaking();
  const only = after(args, '--habit');
  const kinds: [string, OtherMaker, boolean][] = [
    ...Object.entries(habits).map(([name, habit]): [string, OtherMaker, boolean] => [name, { habit }, true]),
    ...Object.entries(otherMakers).map(([name, maker]): [string, OtherMaker, boolean] => [
      name,
      maker,
      false,
    ]),
  ];
  const ofHabits = kinds.flatMap(([name, maker, isMain], h) => {
    if (only !== undefined && only !== name && only !== (isMain ? 'main' : 'others')) return [];
    const cells = PACES.flatMap((pace, p) =>
      BATCH_SIGMAS.map((batchSigma, s) => {
        const random = seededRandom(seed * 10_007 + h * 101 + p * 11 + s);
        const seen = Array.from({ length: makers }, () =>
          simulateMaker(making, { pace, batchSigma, ...maker }, AFTER, random),
        );
        return { name: `pace ${String(pace)}, σ ${String(batchSigma)}`, seen };
      }),
    );
    return AFTER.flatMap((runs, i) =>
      figuresOf(
        `${name}, ${String(runs)} runs`,
        runs,
        cells.map(({ name: kind, seen }) => ({ name: kind, seen: seen.map((each) => each[i] as Judged) })),
      ),
    );
  });
  const taught =
    only === undefined || only === 'none' ? [...whatLogsTeach(making, makers, seed), ...sameRecipe()] : [];
  return [...taught, ...ofHabits];
}

/**
 * Makers who never wrote “not yet” tell nothing of their soap, whatever their habit: quick soap is found ready at the first look, and
 * so is any by who writes the end only. They must keep the forecast of the start, and no plan may ask for it sooner than
 * they ever did it. The others are judged by how well their forecasts do.
 */
function figuresOf(of: string, runs: number, cells: readonly Cell[]): Figure[] {
  const early = runs < 10;
  const coverageBar: Bar = { least: early ? 0.7 : 0.75, most: runs < 30 ? 1 : 0.88 };
  const ratioBar: Bar = early ? { least: 0.8, most: 1.2 } : { least: 0.87, most: 1.15 };
  const told = cells.flatMap((cell) => judgeCell(cell, coverageBar, ratioBar) ?? []);
  if (told.length > 0) print(of, told);
  const figures = untoldFigures(
    of,
    cells.flatMap(({ seen }) => seen.filter(({ isTold }) => !isTold)),
  );
  if (told.length === 0) return figures;
  const worst = (value: (each: JudgedCell) => Estimate, sign: 1 | -1): { name: string; of: Estimate } =>
    told
      .map((cell) => ({ name: cell.name, of: value(cell) }))
      .reduce((a, b) => (sign * b.of.value > sign * a.of.value ? b : a));
  const coverage = (cell: JudgedCell): Estimate => cell.coverage;
  const ratio = (cell: JudgedCell): Estimate => cell.ratio;
  const named = (what: string, { name, of: { verdict } }: ReturnType<typeof worst>): string =>
    `${of}: ${what} (${name}; ${verdict})`;
  const [least, most, low, high] = [
    worst(coverage, -1),
    worst(coverage, 1),
    worst(ratio, -1),
    worst(ratio, 1),
  ];
  const mostName = named('most coverage', most);
  const short = told
    .flatMap((cell) => [cell.coverage, cell.ratio])
    .filter(({ verdict }) => verdict === 'short');
  return [
    ...figures,
    { ...atLeast(named('least coverage', least), 100 * least.of.value, 100 * coverageBar.least), unit: '%' },
    runs < 30
      ? watched(mostName, 100 * most.of.value, '%', 'lower')
      : atMost(mostName, 100 * most.of.value, '%', 100 * coverageBar.most),
    atLeast(named('likely over true, least', low), low.of.value, ratioBar.least),
    atMost(named('likely over true, most', high), high.of.value, '', ratioBar.most),
    atMost(`${of}: bars of cells missed, neither by luck nor out of reach`, short.length, '', 0),
  ];
}

function untoldFigures(of: string, untold: readonly Judged[]): Figure[] {
  if (untold.length === 0) return [];
  const most = (value: (each: Judged) => number): number =>
    Math.max(...untold.map((each) => Math.abs(value(each))));
  return [
    atMost(`${of}: untold, likely moved by`, 100 * most(({ moved }) => Math.log(moved)), '%', 0.1),
    atMost(`${of}: untold, band changed by`, 100 * most(({ widened }) => Math.log(widened)), '%', 0.1),
    atMost(
      `${of}: untold, planned too early by`,
      most(({ tooEarlyMin }) => tooEarlyMin),
      'min',
      1,
    ),
  ];
}

/** A line for each cell: value, its interval, the oracle's, and what that comes to. */
function print(of: string, cells: readonly JudgedCell[]): void {
  const told = ({ value, from, to, oracles, verdict }: Estimate, times: number, digits: number): string => {
    const [a, b, c, d, e] = [value, from, to, ...oracles].map((each) =>
      (times * each).toFixed(digits).padStart(5),
    );
    return `${String(a)} (${String(b)} to ${String(c)}), oracles ${String(d)} ${String(e)}, ${verdict.padEnd(14)}`;
  };
  console.log(`\n${of}: coverage in %; likely over true; high over low`);
  for (const { name, makers, coverage, ratio, width, oracleWidths } of cells) {
    const widths = `${width.toFixed(2)}, oracles ${oracleWidths.map((each) => each.toFixed(2)).join(' ')}`;
    console.log(
      `  ${name.padEnd(18)} ${String(makers).padStart(3)} makers  ${told(coverage, 100, 1)}  ${told(ratio, 1, 2)}  ${widths}`,
    );
  }
}

/** The lower layer alone of a small run file. */
function theMaking(): Making {
  const { workshop, recipes, moulds, designs } = loadRunFile('ok', 'two-layer');
  const [[recipe], [mould], [design]] = [recipes, moulds, designs];
  const [part] = design?.parts ?? [];
  const [pour] = design?.stages ?? [];
  const unmould = design?.stages.find(({ kind }) => kind === 'unmould');
  if (!recipe || !mould || !design || !part || !pour || !unmould)
    throw new Error('not the file that was meant');
  const alone = {
    ...design,
    parts: [part],
    stages: [pour, { ...unmould, part: part.key, needs: [] }],
    ...{ links: [], waits: [] },
  };
  return {
    ...{ workshop, recipe, mould, design: alone },
    ...{ pour: pour.key, unmould: unmould.key, part: part.key },
  };
}

function after(args: readonly string[], name: string): string | undefined {
  const at = args.indexOf(name);
  return at < 0 ? undefined : args[at + 1];
}
