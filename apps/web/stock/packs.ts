import type { Schemas } from '../api/client.js';
import type { KnownMaterial } from './use-choices.js';

type Facts = Schemas['WorkshopFacts'];
export type Pack = Facts['materials'][number]['packs'][number];

/** As many as the contract takes. */
const MOST = 6;

/** The same facts with a pack of a material, in place of one of the same size; the one used latest stands first. */
export function withPack(facts: Facts, material: KnownMaterial, pack: Pack): Facts {
  return withPacks(facts, material, (packs) =>
    [pack, ...packs.filter(({ size }) => size !== pack.size)].slice(0, MOST),
  );
}

/** The same facts with other packs of a material, which becomes known by this. */
export function withPacks(
  facts: Facts,
  { key, title, unit }: KnownMaterial,
  change: (packs: readonly Pack[]) => Pack[],
): Facts {
  const isKnown = facts.materials.some((each) => each.key === key);
  const materials = isKnown
    ? facts.materials
    : [...facts.materials, { key, title, unit, onHand: 0, packs: [] }];
  return {
    ...facts,
    materials: materials.map((each) =>
      each.key === key && each.unit === unit ? { ...each, packs: change(each.packs) } : each,
    ),
  };
}

/** What packs come to, without the tail that binary sums have: three packs of 0.1 are 0.3. */
export function rounded(value: number): number {
  return Number(value.toPrecision(12));
}
