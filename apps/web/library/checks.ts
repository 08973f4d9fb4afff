/** Fetched when it is needed: the schemas and the chemistry are much larger than a form. */
import { checkFat, checkRecipe, fatTable, fromSheet } from '#chemistry';
import {
  fat,
  mould,
  parseWith,
  pieceDesign,
  recipe,
  workshopFacts,
  type Fat,
  type Mould,
  type Recipe,
  type WorkshopFacts,
} from '#contract';
import { cavityMl, checkDesign, checkMould, checkWorkshop } from '#runs';
import { pathText, type Accepted, type Issue } from '#units';
import { listAt, valueAt, type Group, type Value } from '../form/values.js';
import type { Kind } from './shelf-calls.js';

/** What a thing may refer to. */
export interface Around {
  readonly recipes: readonly Recipe[];
  readonly fats: readonly Fat[];
  readonly moulds: readonly Mould[];
  readonly workshop: WorkshopFacts;
}

/** All that the API would have against a thing, paths from its own root. */
export function issuesIn(kind: Kind, content: Value, around: Around): Issue[] {
  switch (kind) {
    case 'moulds': {
      const read = parseWith(mould, content);
      return read.ok ? checkMould(read.value) : [...read.issues].map(readable);
    }
    case 'fats': {
      const read = parseWith(fat, content);
      return read.ok ? checkFat(fromSheet(read.value)) : [...read.issues].map(readable);
    }
    case 'recipes': {
      const read = parseWith(recipe, content);
      if (!read.ok) return [...read.issues].map(readable);
      return checkRecipe(read.value, fatTable(around.fats.map(fromSheet)));
    }
    case 'designs': {
      return issuesInDesign(content, around);
    }
  }
}

/**
 * What is wrong with a design, all of it at once: where something is still missing, what can be told without it is told too.
 */
function issuesInDesign(content: Value, around: Around): Issue[] {
  const read = parseWith(pieceDesign, content);
  if (read.ok) return checkDesign(read.value, around);
  const missing = missingOfParts(content);
  // Until the maker says how to enter an amount, it is the bare figure that is missing.
  const told = [...read.issues].map(readable).filter(({ path }) => !isOpenAmount(content, path));
  const filled = parseWith(pieceDesign, standIn(content));
  const recipes = [...around.recipes, { key: STAND_IN, fats: [] as Recipe['fats'] } as Recipe];
  const more = filled.ok ? checkDesign(filled.value, { ...around, recipes }) : [];
  const first = new Map<string, Issue>();
  for (const issue of [...told, ...missing, ...more]) {
    const place = pathText(issue.path);
    if (!first.has(place)) first.set(place, issue);
  }
  return [...first.values()];
}

/** What a schema tells only once all else is right: how much a piece takes, and of which cavity that is a share. */
function missingOfParts(content: Value): Issue[] {
  return listAt(content, ['parts']).flatMap((part, i): Issue[] => {
    if (valueAt(part, ['kind']) === 'decor') return [];
    const amount = valueAt(part, ['amount']);
    if (amount === undefined && valueAt(part, ['perPieceMl']) === undefined)
      return [{ code: 'input.missing', path: ['parts', i, 'perPieceMl'] }];
    const isShare = valueAt(amount, ['by']) === 'cavity' && valueAt(part, ['mould']) === undefined;
    return isShare ? [{ code: 'input.missing', path: ['parts', i, 'mould'] }] : [];
  });
}

function isOpenAmount(content: Value, [list, index, field]: Issue['path']): boolean {
  if (list !== 'parts' || index === undefined || field !== 'amount') return false;
  return ['amount', 'perPieceMl'].every((each) => valueAt(content, [list, index, each]) === undefined);
}

/** No recipe has such a key. */
const STAND_IN = 'stand-in';

/** A design with something in each place that is still empty, so that the rest of it can be checked. */
function standIn(content: Value): Value {
  const parts = listAt(content, ['parts']).map((part) => {
    const { amount, perPieceMl, ...rest } = part as Group;
    const { kind, mould } = rest;
    const isOpen = perPieceMl === undefined && (amount === undefined || mould === undefined);
    return {
      ...rest,
      title: rest['title'] ?? '…',
      ...(kind === 'batch' && { recipe: rest['recipe'] ?? STAND_IN }),
      ...(kind !== 'decor' && (isOpen ? { perPieceMl: 0.01 } : { amount, perPieceMl })),
    };
  });
  const stages = listAt(content, ['stages']).map((stage) => ({ title: '…', ...(stage as Group) }));
  return { title: '…', ...(content as Group), parts, stages };
}

/** The same for the facts of the workshop. */
export function issuesInFacts(facts: Value): Issue[] {
  const read = parseWith(workshopFacts, facts);
  return read.ok ? checkWorkshop(read.value) : [...read.issues].map(readable);
}

/** mL that one cavity holds; undefined while the mould is not described. */
export function capacityOf(content: Value): number | undefined {
  const read = parseWith(mould, { cavities: 1, ...(content as object), key: 'mould', title: 'mould' });
  return read.ok && checkMould(read.value).length === 0 ? cavityMl(read.value) : undefined;
}

/** A number field keeps the text that it could not read. */
function readable(issue: Issue): Issue {
  const { accepted, path, value } = issue;
  if (typeof value !== 'string' || accepted === undefined || !isForNumbers(accepted)) return issue;
  return { code: 'form.no-number', path, value };
}

function isForNumbers(accepted: Accepted): boolean {
  if (accepted.kind === 'range') return accepted.unit !== 'characters' && accepted.unit !== 'entries';
  return accepted.kind === 'form' && ['number', 'whole-number', 'saponification'].includes(accepted.form);
}
