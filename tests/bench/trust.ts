import { loadRunFile } from '../support/run-files.js';
import { atLeast, atMost, median, watched, type Figure } from '../support/figure.js';
import { seededRandom } from '#units';
import { habits } from './trust/habits.js';
import { simulateMaker, type Judged, type Making } from './trust/simulated-maker.js';
import { sameRecipe } from './trust/same-recipe.js';
import { whatLogsTeach } from './trust/what-logs-teach.js';

const AFTER = [3, 10, 30, 100] as const;
const PACES = [0.67, 1, 1.5, 2];
const BATCH_SIGMAS = [0.1, 0.25, 0.4];

/**
 * Can forecasts be trusted by people as they are? Makers with habits of looking and logging, slow or fast, steady or not,
 * make the same piece again and again; after some runs the next batch is held against the forecast. What the clocks assume
 * of logs is not what draws them. For each habit the worst is told over paces and spreads from batch to batch, and where that is.
 * @param args `--makers N` of each kind (30), `--seed N` (1), `--habit NAME` for one alone, `none` for what is not told by habit
 */
export function figures(args: readonly string[] = []): Figure[] {
  const makers = Number(after(args, '--makers') ?? 30);
  const seed = Number(after(args, '--seed') ?? 1);
  console.log(`Seed ${String(seed)}, ${String(makers)} makers of each kind.`);
  const making = theMaking();
  const only = after(args, '--habit');
  const ofHabits = Object.entries(habits).flatMap(([name, habit], h) => {
    if (only !== undefined && name !== only) return [];
    const cells = PACES.flatMap((pace, p) =>
      BATCH_SIGMAS.map((batchSigma, s) => {
        const random = seededRandom(seed * 10_007 + h * 101 + p * 11 + s);
        const seen = Array.from({ length: makers }, () =>
          simulateMaker(making, { pace, batchSigma, habit }, AFTER, random),
        );
        const name = `pace ${String(pace)}, σ ${String(batchSigma)}`;
        return { name, seen: AFTER.map((_, i) => seen.map((each) => each[i] as Judged)) };
      }),
    );
    return AFTER.flatMap((runs, i) =>
      figuresOf(
        `${name}, ${String(runs)} runs`,
        runs,
        cells.map(({ name: kind, seen }) => ({ name: kind, seen: seen[i] ?? [] })),
      ),
    );
  });
  const taught =
    only === undefined || only === 'none' ? [...whatLogsTeach(making, makers, seed), ...sameRecipe()] : [];
  return [...taught, ...ofHabits];
}

/** A cell is judged by makers whose logs tell of soap, if there are at least so many of them: of a third the mean is luck. */
const TOLD_AT_LEAST = 0.5;

/**
 * Makers who never wrote “not yet” tell nothing of their soap, whatever their habit: quick soap is found ready at the first look, and
 * so is any by who writes the end only. They must keep the forecast of the start, and no plan may ask for it sooner than
 * they ever did it. The others are judged by how well their forecasts do.
 */
function figuresOf(of: string, runs: number, cells: readonly Cell[]): Figure[] {
  const told = cells.flatMap(({ name, seen }) => {
    const known = seen.filter(({ isTold }) => isTold);
    return known.length >= TOLD_AT_LEAST * seen.length ? [{ name, of: ofAll(known) }] : [];
  });
  const untold = cells.flatMap(({ seen }) => seen.filter(({ isTold }) => !isTold));
  const early = runs < 10;
  const figures: Figure[] = [];
  if (untold.length > 0) {
    const most = (value: (each: Judged) => number): number =>
      Math.max(...untold.map((each) => Math.abs(value(each))));
    figures.push(
      atMost(`${of}: untold, likely moved by`, 100 * most(({ moved }) => Math.log(moved)), '%', 0.1),
      atMost(`${of}: untold, band changed by`, 100 * most(({ widened }) => Math.log(widened)), '%', 0.1),
      atMost(
        `${of}: untold, planned too early by`,
        most(({ tooEarlyMin }) => tooEarlyMin),
        'min',
        1,
      ),
    );
  }
  if (told.length === 0) return figures;
  const worst = (value: (each: Well) => number, sign: 1 | -1): { name: string; value: number } =>
    told
      .map(({ name, of: each }) => ({ name, value: value(each) }))
      .reduce((a, b) => (sign * b.value > sign * a.value ? b : a));
  const [least, most] = [
    worst(({ coverage }) => 100 * coverage, -1),
    worst(({ coverage }) => 100 * coverage, 1),
  ];
  const [low, high] = [worst(({ ratio }) => ratio, -1), worst(({ ratio }) => ratio, 1)];
  const mostName = `${of}: most coverage (${most.name})`;
  return [
    ...figures,
    { ...atLeast(`${of}: least coverage (${least.name})`, least.value, early ? 70 : 75), unit: '%' },
    runs < 30 ? watched(mostName, most.value, '%', 'lower') : atMost(mostName, most.value, '%', 88),
    atLeast(`${of}: likely over true, least (${low.name})`, low.value, early ? 0.8 : 0.87),
    atMost(`${of}: likely over true, most (${high.name})`, high.value, '', early ? 1.2 : 1.15),
    watched(
      `${of}: high over low of the band, median`,
      median(told.map((each) => each.of.width)),
      '',
      'lower',
    ),
  ];
}

/** How well forecasts did. */
type Well = Pick<Judged, 'coverage' | 'ratio' | 'width'>;

/** Makers of one pace and spread. */
interface Cell {
  readonly name: string;
  readonly seen: readonly Judged[];
}

/** Of makers of one kind: mean coverage, and the middle of the rest. */
function ofAll(seen: readonly Judged[]): Well {
  return {
    coverage: seen.reduce((sum, { coverage }) => sum + coverage, 0) / seen.length,
    ratio: median(seen.map(({ ratio }) => ratio)),
    width: median(seen.map(({ width }) => width)),
  };
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
