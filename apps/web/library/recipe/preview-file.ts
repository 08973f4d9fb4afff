import type { Fat, Mould, WorkshopFacts } from '#contract';
import type { Value } from '../../form/values.js';

/** What a batch of the recipe is made for. */
export type Purpose =
  | { readonly by: 'mould'; readonly mould: string; readonly cavities: number; readonly perCavityS: number }
  | { readonly by: 'volume'; readonly ml: number };

export interface LookupTables {
  readonly workshop: WorkshopFacts;
  readonly moulds: readonly Mould[];
  readonly fats: readonly Fat[];
}

const PART = 'batch';
/** Mixing and the way to the mould; the clocks do not ask how long. */
const MIXING_MIN = 30;

/**
 * A run file in which one batch of a recipe is poured and unmoulded: what the API works amounts and clocks out from.
 * A block in a lined mould is cut as well, so that the clocks tell when.
 * @param recipe as it stands in the form; the API says what is wrong with it
 */
export function previewFile(recipe: Value, purpose: Purpose, around: LookupTables): object {
  const mould = purpose.by === 'mould' ? around.moulds.find(({ key }) => key === purpose.mould) : undefined;
  const isBlock = mould?.kind === 'lined-wood' || mould?.kind === 'lined-carton';
  const stage = (kind: string): object => ({ key: kind, title: kind, kind, part: PART });
  return {
    schema: 'benchtide.run-file/3',
    workshop: { ...around.workshop, materials: [] },
    moulds: mould === undefined ? [] : [mould],
    fats: around.fats,
    recipes: [{ ...(recipe as object), key: 'recipe', title: 'Recipe' }],
    designs: [
      {
        key: 'preview',
        title: 'Preview',
        parts: [{ key: PART, title: 'Batch', kind: 'batch', recipe: 'recipe', ...use(purpose) }],
        stages: [
          {
            ...stage('pour'),
            setupMin: MIXING_MIN,
            perPieceS: purpose.by === 'mould' ? purpose.perCavityS : 0,
          },
          stage('unmould'),
          ...(isBlock ? [stage('cut')] : []),
        ],
        links: [],
        waits: [{ stage: 'unmould', part: PART, opens: 'firm' }],
      },
    ],
    runs: [
      {
        key: 'preview',
        title: 'Preview',
        design: 'preview',
        count: purpose.by === 'mould' ? purpose.cavities : 1,
        startAfter: '2026-01-05T09:00',
      },
    ],
  };
}

function use(purpose: Purpose): object {
  return purpose.by === 'mould'
    ? { mould: purpose.mould, amount: { by: 'cavity', fillPercent: 100 } }
    : { perPieceMl: purpose.ml };
}
