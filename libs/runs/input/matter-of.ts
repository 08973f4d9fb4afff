import { mouldOf, type Fat, type Mould, type PieceDesign, type Recipe } from '#contract';

/** What a design refers to. */
export interface DesignMatter {
  readonly recipes: readonly Recipe[];
  readonly fats: readonly Fat[];
  readonly moulds: readonly Mould[];
}

/** What of a library a design refers to, by way of its parts. Fats are the maker's own. */
export function referencedBy(design: PieceDesign, library: DesignMatter): DesignMatter {
  const parts = design.parts.flatMap((part) => (part.kind === 'batch' ? [part] : []));
  const recipes = library.recipes.filter(({ key }) => parts.some(({ recipe }) => recipe === key));
  const fats = new Set(recipes.flatMap((recipe) => recipe.fats.map((share) => share.fat)));
  return {
    recipes,
    fats: library.fats.filter(({ key }) => fats.has(key)),
    moulds: library.moulds.filter(({ key }) => design.parts.some((part) => mouldOf(part) === key)),
  };
}
