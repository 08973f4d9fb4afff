import {
  batchForFats,
  liquidTable,
  questionsAbout,
  recipeRisks,
  replacedFat,
  type BatchAmounts,
} from '#chemistry';
import type { BatchPart, BatchToMix, Caution, PartAmounts, Portion, RecipeFacts, Risk } from '#contract';
import { failed, isNonEmpty, ok, type Issue, type Result } from '#units';
import { batchOf } from '../input/mixed-together.js';
import { partBatter, portionsOf, portionBatter } from '../input/part-batter.js';
import { piecesWith } from '../input/pieces.js';
import type { Batter, ResolvedRun } from '../input/resolve-run.js';

/** A part that was sized, and which round of its batch it belongs to. */
export interface SizedPart {
  readonly amounts: PartAmounts;
  /** Parts of one batch that are made in the same round are mixed at once; absent: the first. */
  readonly round?: number | undefined;
}

/**
 * What is mixed at once: parts of one batch, added up. Everything in a batch grows with its fats, so the batch of several
 * parts is the batch of all their fats, and its lye and what is told about it stand once.
 */
export function batchesToMix(run: ResolvedRun, sized: readonly SizedPart[]): Result<BatchToMix[]> {
  const together = new Map<string, { readonly part: BatchPart; readonly amounts: PartAmounts }[]>();
  for (const { amounts, round = 0 } of sized) {
    const part = run.parts.get(amounts.part);
    if (part?.kind !== 'batch') continue;
    const name = `${batchOf(part)} ${String(round)}`;
    together.set(name, [...(together.get(name) ?? []), { part, amounts }]);
  }
  const batches: BatchToMix[] = [];
  const issues: Issue[] = [];
  for (const members of together.values()) {
    const batch = mixedAtOnce(run, members);
    if (batch.ok) batches.push(batch.value);
    else issues.push(...batch.issues);
  }
  return isNonEmpty(issues) ? failed(...issues) : ok(batches);
}

type Members = readonly { readonly part: BatchPart; readonly amounts: PartAmounts }[];

function mixedAtOnce(run: ResolvedRun, members: Members): Result<BatchToMix> {
  const [first] = members;
  const recipe = first && run.recipes.get(first.part.recipe);
  if (first === undefined || recipe === undefined) throw new Error('a batch without a part or recipe');
  const fatsG = members.reduce((sum, { amounts }) => sum + fatsOf(amounts), 0);
  const batch = batchForFats(recipe, run.fats, fatsG);
  if (!batch.ok) return batch;
  return ok({
    batch: batchOf(first.part),
    title: members.length === 1 ? first.part.title : recipe.title,
    recipe: recipe.key,
    parts: members.map(({ part }) => part.key),
    amounts: batch.value,
    told: recipeFacts(recipe),
    portions: members.flatMap((member) => portionsTaken(member, recipe, run, batch.value)),
    risks: [
      ...questionsOf(recipe, run),
      ...ownFigures(recipe, run),
      ...recipeRisks(recipe, batch.value, run.fats),
    ],
    cautions: [{ code: 'caution.lye' }, { code: 'caution.fresh-soap' }, ...allergensOf(recipe)],
  });
}

function fatsOf({ batch }: PartAmounts): number {
  if (batch === undefined) throw new Error('a batch part without its amounts');
  return batch.fatsG;
}

/** What people may be allergic to in the liquids; of one with figures of its own only what its row of the table tells is known. */
function allergensOf({ liquids }: Batter): Caution[] {
  const all = liquids.flatMap(({ liquid }) => liquidTable.get(liquid)?.allergens ?? []);
  return all.length === 0 ? [] : [{ code: 'caution.allergens', allergens: [...new Set(all)] }];
}

/** What a recipe says, beside what is weighed by it. */
export function recipeFacts(recipe: Batter): RecipeFacts {
  const { superfatPercent, naohPurityPercent, kohSharePercent, kohPurityPercent, batterTemperatureC } =
    recipe;
  return {
    ...{ superfatPercent, naohPurityPercent, kohSharePercent, batterTemperatureC },
    ...(kohPurityPercent === undefined ? {} : { kohPurityPercent }),
  };
}

function portionsTaken(
  { part, amounts }: Members[number],
  recipe: Batter,
  run: ResolvedRun,
  whole: BatchAmounts,
): BatchToMix['portions'] {
  const size = {
    volumeMl: amounts.batch?.batchMl ?? 0,
    ofRun: amounts.count / piecesWith(run.order, part.key),
  };
  const { shares } = partBatter(part, recipe, run.fats, size);
  return portionsOf(part).map((portion, i) => {
    const fatsG = fatsOf(amounts) * (shares[i] ?? 0);
    const of = ({
      key,
      title,
      percent,
    }: Pick<Portion['additions'][number], 'key' | 'title' | 'percent'>) => ({
      ...{ key, title },
      massG: (fatsG * percent) / 100,
    });
    return {
      part: part.key,
      ...(portion.key === undefined ? {} : { portion: portion.key }),
      title: portion.title ?? part.title,
      massG: (whole.batchG * fatsG) / whole.fatsG,
      sharePercent: (100 * fatsG) / whole.fatsG,
      colourants: portion.colourants.map(({ key, title, percent, carrier }) => ({
        ...of({ key, title, percent }),
        ...(carrier && {
          carrier: {
            kind: carrier.kind,
            ...(carrier.fat !== undefined && { fat: carrier.fat }),
            massG: ((fatsG * percent) / 100) * carrier.perGram,
          },
        }),
      })),
      additions: portion.additions.map(of),
      fragrances: portion.fragrances.map(of),
    };
  });
}

/** What a part's own colours, additions and fragrances bring, beside what is told of its batch. */
export function portionRisks(part: BatchPart, recipe: Batter, run: ResolvedRun, fatsG: number): Risk[] {
  const risks = portionsOf(part).flatMap((portion) => {
    const whole = portionBatter(portion, recipe);
    // What scents the whole batch is told with it, unless a portion has more.
    const fragrances = portion.fragrances.length === 0 ? [] : whole.fragrances;
    const own = { ...whole, additions: portion.additions, fragrances };
    const batch = batchForFats(own, run.fats, fatsG);
    return batch.ok ? recipeRisks(own, batch.value, run.fats).filter(isOwn) : [];
  });
  const told = new Set<string>();
  return risks.filter((risk) => !told.has(JSON.stringify(risk)) && told.add(JSON.stringify(risk)));
}

function isOwn({ code }: Risk): boolean {
  return ['colourant.', 'fragrance.', 'addition.'].some((family) => code.startsWith(family));
}

/** What was questioned about a fat and confirmed is said again where it is weighed. */
function questionsOf({ fats }: Batter, run: ResolvedRun): Risk[] {
  return fats.flatMap(({ fat }) => {
    const facts = run.fats.get(fat);
    if (facts?.confirmed !== true) return [];
    return questionsAbout(facts).map(({ code: question }) => ({
      ...{ code: 'fat.confirmed' as const, level: 'high' as const },
      ...{ fat, title: facts.title, question },
    }));
  });
}

/** An own figure counts in place of the shipped one without a word elsewhere, so it is told where lye is weighed by it. */
function ownFigures({ fats }: Batter, run: ResolvedRun): Risk[] {
  return fats.flatMap(({ fat }) => {
    const facts = run.fats.get(fat);
    const replaced = facts === undefined ? undefined : replacedFat(facts);
    if (facts === undefined || replaced === undefined) return [];
    const { used } = facts.saponificationMgKohPerG;
    const figure = { fat, title: facts.title, used, ...replaced };
    return [{ code: 'fat.own-figure' as const, level: 'low' as const, ...figure }];
  });
}
