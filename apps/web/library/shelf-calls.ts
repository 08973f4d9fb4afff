import { useQuery, type UseQueryResult } from '@tanstack/react-query';
import type { Fat, Mould, PieceDesign, Recipe, WorkshopFacts } from '#contract';
import { answered, api, type Schemas } from '../api/client.js';

/** What the maker keeps: each kind has a shelf of its own in the API. */
export interface Contents {
  readonly moulds: Mould;
  readonly fats: Fat;
  readonly recipes: Recipe;
  readonly designs: PieceDesign;
}
export type Kind = keyof Contents;

export interface Thing<K extends Kind = Kind> {
  readonly id: string;
  readonly version: number;
  readonly content: Contents[K];
}

// The four shelves answer alike, which the types of the description cannot say; that of recipes stands for all.
type List = '/api/recipes';
type Item = '/api/recipes/{id}';
type Content = Schemas['RecipeInput'];

export function useThings<K extends Kind>(kind: K): UseQueryResult<readonly Thing<K>[]> {
  return useQuery({
    queryKey: [kind],
    queryFn: async () => (await answered(api.GET(`/api/${kind}` as List))) as never,
  });
}

/** @param once a UUID: the same call twice makes one thing */
export async function createThing(kind: Kind, content: unknown, once: string): Promise<Thing> {
  const body = content as Content;
  const params = { header: { 'Idempotency-Key': once } };
  return await answered(api.POST(`/api/${kind}` as List, { body, params }));
}

export async function replaceThing(
  kind: Kind,
  id: string,
  version: number,
  content: unknown,
): Promise<Thing> {
  const body = { version, content: content as Content };
  const params = { path: { id } };
  return await answered(api.PUT(`/api/${kind}/{id}` as Item, { body, params }));
}

/** Takes it out of use; runs keep their copy. */
export async function archiveThing(kind: Kind, id: string, version: number): Promise<void> {
  const params = { path: { id }, query: { version } };
  await answered(api.DELETE(`/api/${kind}/{id}` as Item, { params }));
}

export function useShippedFats(): UseQueryResult<readonly Schemas['ShippedFat'][]> {
  return useQuery({
    queryKey: ['shipped-fats'],
    queryFn: () => answered(api.GET('/api/shipped-fats')),
    staleTime: Infinity,
  });
}

export function useShippedLiquids(): UseQueryResult<readonly Schemas['ShippedLiquid'][]> {
  return useQuery({
    queryKey: ['shipped-liquids'],
    queryFn: () => answered(api.GET('/api/shipped-liquids')),
    staleTime: Infinity,
  });
}

export function useWorkshop(): UseQueryResult<Schemas['StoredWorkshop']> {
  return useQuery({ queryKey: ['workshop'], queryFn: () => answered(api.GET('/api/workshop')) });
}

/** The facts as the contract has them. */
export function factsOf(workshop: Schemas['StoredWorkshop']): WorkshopFacts {
  return workshop.facts;
}
