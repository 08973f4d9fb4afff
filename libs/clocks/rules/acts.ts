import type { StateId } from '../states.js';

/**
 * Which states a rule acts on is a judgement, made once here for all rules (common practice and memory, no
 * source).
 *
 * What hurries the batter in the bowl goes on hurrying it in the mould: it is the same batter that stiffens
 * until it holds a layer, skins over, takes no decor, no longer bonds with a layer, or skins over as piping. So the rules of the
 * batter act on those five as well, except how it was mixed, because pouring waits for trace however it was
 * reached.
 *
 * What makes the finished soap hard shows only after hours. It acts on `bonds-until`, but not on
 * `holds-layer`, `skinned`, `takes-decor-until` and `piping-skinned`, which have come within an hour or two. As much salt as makes a
 * salt bar acts on all of these: the block stiffens at once.
 *
 * The mould and gel act only on soap that sets in a mould: coats and piping stand open and lose their heat.
 * Soda ash has rules of its own: it ends when the surface has no free lye left, however soft the soap is.
 */

/** The batter once the emulsion holds. */
export const tracing = ['light-trace', 'medium-trace', 'thick-trace', 'stiff'] as const satisfies StateId[];

/** The batter while it is worked in the bowl. */
const inTheBowl = ['emulsion', ...tracing] as const satisfies StateId[];

/** What fats do to the batter by what they are made of; what bonds is moved by how hard their soap is instead. */
export const thickening = [
  ...tracing,
  'holds-layer',
  'skinned',
  'takes-decor-until',
  'piping-skinned',
] as const satisfies StateId[];

/** Every change that is the batter stiffening, in the bowl or just after. */
export const stiffening = [
  ...inTheBowl,
  'holds-layer',
  'skinned',
  'takes-decor-until',
  'bonds-until',
  'piping-skinned',
] as const satisfies StateId[];

/** The first hours of a surface, before what makes the finished soap hard shows. */
export const surfacing = ['holds-layer', 'skinned', 'takes-decor-until'] as const satisfies StateId[];

/** Hardening of soap that sets in a mould. */
export const inTheMould = [
  'patchable',
  'firm',
  'pliable-until',
  'handled',
  'cuttable',
  'cuttable-until',
] as const satisfies StateId[];

/** Hardening of soap that stands open and thin. */
export const inTheOpen = [
  'coat-tacky-until',
  'coat-turnable',
  'piping-firm',
  'piping-turnable',
] as const satisfies StateId[];

/** The drying of the outside, until nothing that is put onto it holds any more. */
export const drying = [
  'takes-piping-until',
  'takes-coat-until',
  'takes-glaze-until',
  'embeds-until',
] as const satisfies StateId[];

/** The cure, from the first use to the best of the soap. */
export const curing = ['usable', 'cured', 'best'] as const satisfies StateId[];
