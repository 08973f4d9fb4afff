import { loadRunFile } from '../support/run-files.js';
import { atLeast, atMost, median, watched, type Figure } from '../support/figure.js';
import { seededRandom } from '#units';
import { habits } from './trust/habits.js';
import { simulateMaker, type Judged, type Making } from './trust/simulated-maker.js';

const AFTER = [3, 10, 30, 100] as const;
const PACES = [0.67, 1, 1.5, 2];
const BATCH_SIGMAS = [0.1, 0.25, 0.4];

/**
 * Can forecasts be trusted by people as they are? Makers with habits of looking and logging, slow or fast, steady or not,
 * make the same piece again and again; after some runs the next batch is held against the forecast. What the clocks assume
 * of logs is not what draws them. For each habit the worst is told over paces and spreads from batch to batch.
 * @param args `--makers N` of each kind (30), `--seed N` (1)
 */
export function figures(args: readonly string[] = []): Figure[] {
  const makers = Number(after(args, '--makers') ?? 30);
  const seed = Number(after(args, '--seed') ?? 1);
  console.log(`Seed ${String(seed)}, ${String(makers)} makers of each kind.`);
  const making = theMaking();
  return Object.entries(habits).flatMap(([name, habit], h) => {
    const cells = PACES.flatMap((pace, p) =>
      BATCH_SIGMAS.map((batchSigma, s) => {
        const random = seededRandom(seed * 10_007 + h * 101 + p * 11 + s);
        const seen = Array.from({ length: makers }, () =>
          simulateMaker(making, { pace, batchSigma, habit }, AFTER, random),
        );
        return { pace, batchSigma, seen: AFTER.map((_, i) => ofAll(seen.map((each) => each[i] as Judged))) };
      }),
    );
    return AFTER.flatMap((runs, i) =>
      figuresOf(
        `${name}, ${String(runs)} runs`,
        runs,
        cells.map(({ seen }) => seen[i] as Judged),
      ),
    );
  });
}

function figuresOf(of: string, runs: number, cells: readonly Judged[]): Figure[] {
  const covered = cells.map(({ coverage }) => 100 * coverage);
  const ratios = cells.map(({ ratio }) => ratio);
  const early = runs < 10;
  return [
    { ...atLeast(`${of}: least coverage`, Math.min(...covered), early ? 70 : 75), unit: '%' },
    runs < 30
      ? watched(`${of}: most coverage`, Math.max(...covered), '%', 'lower')
      : atMost(`${of}: most coverage`, Math.max(...covered), '%', 88),
    atLeast(`${of}: likely over true, least`, Math.min(...ratios), early ? 0.8 : 0.87),
    atMost(`${of}: likely over true, most`, Math.max(...ratios), '', early ? 1.2 : 1.15),
    watched(`${of}: high over low of the band, median`, median(cells.map(({ width }) => width)), '', 'lower'),
  ];
}

/** Of makers of one kind: mean coverage, and the middle of the rest. */
function ofAll(seen: readonly Judged[]): Judged {
  const [{ runs }] = seen as [Judged, ...Judged[]];
  return {
    runs,
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
