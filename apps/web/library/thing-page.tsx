import type { ReactNode } from 'react';
import { useParams, useSearchParams } from 'react-router';
import type { Value } from '../form/values.js';
import { withValue } from '../form/values.js';
import { Failed, Loading, NothingHere } from '../shell/states.js';
import { useWords } from '../words/words.js';
import type { Around } from './checks.js';
import { factsOf, useThings, useWorkshop, type Kind, type Thing } from './shelf-calls.js';

export interface Opened<K extends Kind> {
  /** null: something new */
  readonly thing: Thing<K> | null;
  readonly blank: Value;
  readonly around: Around;
  readonly taken: readonly string[];
}

/** Fetches a thing by the address and all that it may refer to, before its page is drawn. */
export function ThingPage<K extends Kind>({
  kind,
  blank,
  children,
}: {
  readonly kind: K;
  readonly blank: Value;
  readonly children: (opened: Opened<K>) => ReactNode;
}): ReactNode {
  const { library } = useWords();
  const { id } = useParams();
  const [search] = useSearchParams();
  const [recipes, fats, moulds] = [useThings('recipes'), useThings('fats'), useThings('moulds')];
  const [designs, workshop] = [useThings('designs'), useWorkshop()];
  const all = { recipes, fats, moulds, designs };
  const waited = [recipes, fats, moulds, designs, workshop];
  const failed = waited.find(({ data, error }) => error !== null && data === undefined);
  if (failed?.error) return <Failed error={failed.error} again={() => void failed.refetch()} />;
  if (!recipes.data || !fats.data || !moulds.data || !designs.data || !workshop.data) return <Loading />;
  const things = all[kind].data as unknown as readonly Thing<K>[];
  const find = (wanted: string | null | undefined): Thing<K> | undefined =>
    things.find((each) => each.id === wanted);
  const thing = id === 'new' ? null : find(id);
  if (thing === undefined) return <NothingHere />;
  const model = find(search.get('like'))?.content as unknown as Value;
  const around = {
    recipes: recipes.data.map(({ content }) => content),
    fats: fats.data.map(({ content }) => content),
    moulds: moulds.data.map(({ content }) => content),
    workshop: factsOf(workshop.data),
  };
  return children({
    thing,
    blank: model === undefined ? blank : copyOf(model, library.copyOf),
    around,
    taken: things.map(({ content }) => content.key),
  });
}

function copyOf(model: Value, name: (title: string) => string): Value {
  const { title } = model as { readonly title: string };
  return withValue(withValue(model, ['key'], undefined), ['title'], name(title));
}
