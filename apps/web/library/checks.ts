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
import type { Accepted, Issue } from '#units';
import type { Value } from '../form/values.js';
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
      return read.ok ? checkMould(read.value) : [...read.issues].map(told);
    }
    case 'fats': {
      const read = parseWith(fat, content);
      return read.ok ? checkFat(fromSheet(read.value)) : [...read.issues].map(told);
    }
    case 'recipes': {
      const read = parseWith(recipe, content);
      if (!read.ok) return [...read.issues].map(told);
      return checkRecipe(read.value, fatTable(around.fats.map(fromSheet)));
    }
    case 'designs': {
      const read = parseWith(pieceDesign, content);
      return read.ok ? checkDesign(read.value, around) : [...read.issues].map(told);
    }
  }
}

/** The same for the facts of the workshop. */
export function issuesInFacts(facts: Value): Issue[] {
  const read = parseWith(workshopFacts, facts);
  return read.ok ? checkWorkshop(read.value) : [...read.issues].map(told);
}

/** mL that one cavity holds; undefined while the mould is not described. */
export function capacityOf(content: Value): number | undefined {
  const read = parseWith(mould, { cavities: 1, ...(content as object), key: 'mould', title: 'mould' });
  return read.ok && checkMould(read.value).length === 0 ? cavityMl(read.value) : undefined;
}

/** A number field keeps the text that it could not read. */
function told(issue: Issue): Issue {
  const { accepted, path, value } = issue;
  if (typeof value !== 'string' || accepted === undefined || !isForNumbers(accepted)) return issue;
  return { code: 'form.no-number', path, value };
}

function isForNumbers(accepted: Accepted): boolean {
  if (accepted.kind === 'range') return accepted.unit !== 'characters' && accepted.unit !== 'entries';
  return accepted.kind === 'form' && ['number', 'whole-number', 'saponification'].includes(accepted.form);
}
