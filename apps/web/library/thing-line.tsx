import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { Fat, Mould, PieceDesign, Recipe } from '#contract';
import { useAmounts } from '../look/amounts.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import { useShippedFats, useThings, type Kind, type Thing } from './shelf-calls.js';
import { waterWay } from './recipe/water-ways.js';

/** What tells a thing from its neighbours, in a line. */
export function ThingLine({ kind, thing }: { readonly kind: Kind; readonly thing: Thing }): ReactNode {
  switch (kind) {
    case 'recipes':
      return <RecipeLine recipe={thing.content as Recipe} />;
    case 'moulds':
      return <MouldLine mould={thing.content as Mould} />;
    case 'designs':
      return <DesignLine design={thing.content as PieceDesign} />;
    case 'fats':
      return <p className="soft small">{(thing.content as Fat).source}</p>;
  }
}

function RecipeLine({ recipe }: { readonly recipe: Recipe }): ReactNode {
  const { library } = useWords();
  const { number, percent, mass } = useAmounts();
  const { titled } = useTexts();
  const own = useThings('fats').data ?? [];
  const { data: shipped = [] } = useShippedFats();
  const way = waterWay(recipe);
  const fatTitles = new Map([
    ...shipped.map(({ key, title }) => [key, titled(key, title)] as const),
    ...own.map(({ content }) => [content.key, content.title] as const),
  ]);
  const fats = recipe.fats
    .map(
      (each) =>
        `${fatTitles.get(each.fat) ?? '…'} ${each.percent === undefined ? mass(each.grams ?? 0) : number(each.percent)}`,
    )
    .join(' · ');
  const water = recipe[way] ?? 33;
  const lye = library.lyeAs[way](way === 'waterPerLye' ? number(water) : percent(water));
  return (
    <p className="soft small">
      {fats}
      <br />
      {library.recipeLine(percent(recipe.superfatPercent), lye)}
    </p>
  );
}

function MouldLine({ mould }: { readonly mould: Mould }): ReactNode {
  const { library } = useWords();
  const capacity = useCapacity(mould);
  const { volume } = useAmounts();
  return (
    <p className="soft small">
      {capacity === undefined ? ' ' : library.mouldLine(mould.cavities, volume(capacity))}
    </p>
  );
}

function DesignLine({ design }: { readonly design: PieceDesign }): ReactNode {
  const { library } = useWords();
  return <p className="soft small">{library.designLine(design.parts.length, design.stages.length)}</p>;
}

/** mL of one cavity; undefined until it is worked out, or where the mould is not described yet. */
export function useCapacity(mould: object): number | undefined {
  const { data } = useQuery({
    queryKey: ['capacity', mould],
    queryFn: async () => (await import('./checks.js')).capacityOf(mould as never) ?? null,
    staleTime: Infinity,
    placeholderData: (before) => before,
  });
  return data ?? undefined;
}
