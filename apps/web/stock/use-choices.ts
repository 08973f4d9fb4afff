import type { Choice, ChoiceGroup } from '../form/fields.js';
import { useTexts } from '../look/use-texts.js';
import { useShippedFats, useThings } from '../library/shelf-calls.js';
import { useStockWords } from './stock-words.js';
import { useStock, type Unit } from './use-stock.js';

/** A material that can be chosen; what it is kept by stands before its key. */
export interface KnownMaterial {
  readonly key: string;
  /** As it is stored; `titled` has it in the language of the page. */
  readonly title: string;
  readonly unit: Unit;
}

/** The choice that stands for a material that nobody knows yet. */
export const ANOTHER = '+';

/** What recipes are made with and no fat, liquid or scent is. */
const usual = ['naoh', 'koh', 'sodium-lactate', 'salt', 'sugar', 'water', 'melt-and-pour', 'soap-dough'];

/** Materials to choose from, those in stock first, and what each of them is. */
export function useMaterialChoices(): {
  readonly groups: readonly (Choice | ChoiceGroup)[];
  readonly known: ReadonlyMap<string, KnownMaterial>;
} {
  const words = useStockWords();
  const { titled, language, names } = useTexts();
  const { data: stock } = useStock();
  const { data: recipes = [] } = useThings('recipes');
  const { data: designs = [] } = useThings('designs');
  const { data: own = [] } = useThings('fats');
  const { data: shipped = [] } = useShippedFats();
  const known = new Map<string, KnownMaterial>();
  const group = (title: string, materials: readonly KnownMaterial[]): ChoiceGroup => ({
    title,
    choices: materials
      .flatMap((each) => {
        const value = nameOf(each);
        if (known.has(value)) return [];
        known.set(value, each);
        return [{ value, text: titled(each.key, each.title) }];
      })
      .sort((a, b) => a.text.localeCompare(b.text, language)),
  });
  const weighed = ({ key, title }: { readonly key: string; readonly title: string }): KnownMaterial => ({
    ...{ key, title, unit: 'g' },
  });
  const fats = [...own.map(({ content }) => content), ...shipped].map(weighed);
  const titleOfFat = new Map(fats.map(({ key, title }) => [key, title]));
  const ofRecipes = recipes.flatMap(({ content }) => [
    ...content.fats.map(({ fat: key }) => weighed({ key, title: titleOfFat.get(key) ?? key })),
    ...[...(content.fragrances ?? []), ...(content.additions ?? [])].map(weighed),
  ]);
  const ofDesigns = designs.flatMap(({ content }) =>
    content.parts.flatMap((part) => {
      if (part.kind === 'batch') return part.colourants.map(weighed);
      if (part.kind !== 'decor') return [];
      if (part.material === undefined) return [{ key: part.key, title: part.title, unit: 'piece' as const }];
      const isDough = part.material === 'soap-dough';
      return isDough ? [] : [weighed({ key: part.material, title: part.title })];
    }),
  );
  const groups = [
    group(
      words.kept,
      (stock?.materials ?? []).map(({ key, title, unit }) => ({ key, title, unit })),
    ),
    group(words.ofRecipes, [...ofRecipes, ...ofDesigns]),
    group(
      words.usual,
      usual.flatMap((key) => {
        const english = (names.englishMaterials ?? names.materials)[key as keyof typeof names.materials];
        return english === undefined ? [] : [weighed({ key, title: english })];
      }),
    ),
    group(words.fats, fats),
  ].filter(({ choices }) => choices.length > 0);
  return { groups: [...groups, { value: ANOTHER, text: words.another }], known };
}

export function nameOf({ key, unit }: Pick<KnownMaterial, 'key' | 'unit'>): string {
  return `${unit} ${key}`;
}
