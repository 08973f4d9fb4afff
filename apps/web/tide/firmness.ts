import type { Schemas } from '../api/client.js';

type Clock = Pick<Schemas['ClockForecast'], 'state' | 'now' | 'closes'>;
type State = Clock['state'];

/** Moments from which the clocks of a part count, in milliseconds since 1970. */
export interface Beginnings {
  readonly lyeIn: number;
  /** End of the pour, the dipping or the piping. */
  readonly made: number;
  /** Out of its mould; that of the making where it has none. */
  readonly freed: number;
}

export interface RibbonPoint {
  readonly at: number;
  /** 0 to 1. */
  readonly thickness: number;
}

/** One edge of a ribbon: how firm the soap is if it is this fast or slow. */
export interface RibbonEdge {
  /** Standard deviations of the logarithm; below 0: faster than likely. */
  readonly z: number;
  readonly points: readonly RibbonPoint[];
}

/**
 * How firm soap in each state is, from 0 (just mixed) to 1 (cured). A scale for the eye, our own judgement; only its
 * order says something about soap. States that close something are left out: they lie between others.
 */
const firmness: Partial<Record<State, number>> = {
  emulsion: 0.05,
  'light-trace': 0.06,
  'medium-trace': 0.08,
  'thick-trace': 0.1,
  stiff: 0.12,
  'holds-layer': 0.15,
  skinned: 0.2,
  patchable: 0.38,
  'coat-turnable': 0.55,
  'piping-firm': 0.44,
  'glaze-set': 0.4,
  firm: 0.58,
  cuttable: 0.58,
  'piping-turnable': 0.62,
  handled: 0.72,
  'glaze-turnable': 0.72,
  usable: 0.9,
  cured: 1,
};
const THINNEST = 0.04;
/** Of what has no clock: it is as firm as it is from the start. */
const CLOCKLESS = 0.3;
/** From lye-in. */
const batter: ReadonlySet<State> = new Set([
  'emulsion',
  'light-trace',
  'medium-trace',
  'thick-trace',
  'stiff',
]);
/** From unmoulding. */
const cure: ReadonlySet<State> = new Set(['usable', 'cured', 'best']);

/** The 10th and 90th percentile of a normal variable lie this far from its middle (standard normal tables). */
const Z90 = 1.2815515655446004;
/** From fast to slow: drawn over each other, the edge blurs as far as the band is wide. */
const edges = [-Z90, -Z90 / 2, 0, Z90 / 2, Z90] as const;

/**
 * The edges of a part's ribbon from its making on, the fastest first. Each only grows, and a faster one is nowhere
 * thinner than a slower one.
 * @param until milliseconds since 1970 up to which they reach
 */
export function ribbonEdges(clocks: readonly Clock[], begin: Beginnings, until: number): RibbonEdge[] {
  return edges.map((z) => ({ z, points: edgeAt(clocks, begin, until, z) }));
}

/** A ribbon that keeps its thickness. */
export function plainEdge(from: number, until: number): RibbonEdge[] {
  const points = [from, Math.max(from, until)].map((at) => ({ at, thickness: CLOCKLESS }));
  return [{ z: 0, points }];
}

function edgeAt(clocks: readonly Clock[], begin: Beginnings, until: number, z: number): RibbonPoint[] {
  const knots = clocks.flatMap(({ state, now, closes }): RibbonPoint[] => {
    const thickness = firmness[state];
    if (thickness === undefined || closes) return [];
    return [{ at: startOf(state, begin) + quantile(now, z) * 60_000, thickness }];
  });
  const sorted = [{ at: begin.lyeIn, thickness: THINNEST }, ...knots].sort((a, b) => a.at - b.at);
  let reached = 0;
  const growing = sorted.flatMap(({ at, thickness }): RibbonPoint[] => {
    if (thickness <= reached) return [];
    reached = thickness;
    return [{ at, thickness }];
  });
  const last = growing.at(-1)!;
  return last.at < until ? [...growing, { at: until, thickness: last.thickness }] : growing;
}

/** Of a log-normal, whose two halves may differ where a log has cut it. */
function quantile({ low, likely, high }: Clock['now'], z: number): number {
  const side = z < 0 ? low / likely : high / likely;
  return likely * side ** (Math.abs(z) / Z90);
}

function startOf(state: State, { lyeIn, made, freed }: Beginnings): number {
  if (batter.has(state)) return lyeIn;
  return cure.has(state) ? freed : made;
}
