import { HANDLED_C, type Kept } from '#clocks';
import type { HeatNote, PartHeat } from '#contract';
import { GEL_SURE, MAY_OVERHEAT } from './heat-chances.js';

/** What the notes are written from. */
type Told = Omit<PartHeat, 'notes'> & { readonly isKeptTold: boolean };
type Way = PartHeat['keptElse'][number];

/** Smaller chances of overheating are not worth a sentence. */
const LEAST_OVERHEATING = 0.05;
/** So much more likely another way has to make an outcome to be worth the towels. */
const WORTHWHILE = 0.05;
/** From the coolest to the warmest. */
const byWarmth: readonly Kept[] = ['chilled', 'open', 'covered', 'wrapped'];

/** What becomes of a part by its own heat as sentences: what to expect, beside what was asked for, and what would change it. */
export function heatNotes(heat: Told): HeatNote[] {
  const { hottestC, hottestMin, overheats, kept, isKeptTold } = heat;
  const cooledMin = cooledOf(heat.curve);
  const fromC = heat.curve[0]?.middleC ?? hottestC.likely;
  return [
    ...(heat.isMade ? [] : [gelNote(heat)]),
    hottestMin > 0 ? { code: 'heat.hottest', hottestC, min: hottestMin } : { code: 'heat.only-cools', fromC },
    ...(cooledMin === undefined ? [] : [{ code: 'heat.cooled', min: cooledMin, belowC: HANDLED_C } as const]),
    ...(overheats >= LEAST_OVERHEATING && !heat.isMade
      ? [{ code: 'heat.overheats', chance: overheats } as const]
      : []),
    { code: 'heat.kept', kept, isTold: isKeptTold },
    ...(heat.isMade ? [] : heatAdvice(heat)),
  ];
}

/** From when on the curve stays cool enough to be handled, min; undefined where it always was, or is not at its end. */
function cooledOf(curve: PartHeat['curve']): number | undefined {
  const last = curve.findLastIndex(({ middleC }) => middleC >= HANDLED_C);
  return last < 0 ? undefined : curve[last + 1]?.min;
}

function gelNote({ asked, gel }: Told): HeatNote {
  return asked === 'auto' ? { code: 'heat.gel', ...gel } : { code: 'heat.gel-asked', asked, ...gel };
}

/** What would change its heat, as it stands: the risks of a part say the same. */
export function heatAdvice(
  heat: Pick<Told, 'asked' | 'gel' | 'overheats' | 'kept' | 'keptElse'>,
): HeatNote[] {
  const { asked, gel, overheats } = heat;
  const [cooler, warmer] = [waysBeyond(heat, -1), waysBeyond(heat, 1)];
  if (overheats >= MAY_OVERHEAT)
    return towards(heat, 'no-overheating', cooler, (way) => 1 - way.overheats, 1 - LEAST_OVERHEATING);
  const safe = warmer.filter((way) => way.overheats < MAY_OVERHEAT);
  const toGel = (): HeatNote[] => towards(heat, 'gel', safe, ({ whole }) => whole, GEL_SURE);
  const toNone = (): HeatNote[] => towards(heat, 'no-gel', cooler, ({ none }) => none, GEL_SURE);
  switch (asked) {
    case 'full':
      return gel.whole >= GEL_SURE ? [] : toGel();
    case 'none':
      return gel.none >= GEL_SURE ? [] : toNone();
    case 'auto':
      return Math.max(gel.whole, gel.none) >= GEL_SURE ? [] : [...toGel(), ...toNone()];
  }
}

/** Ways to keep the mould that are cooler (−1) or warmer (1), the nearest first. */
function waysBeyond({ kept, keptElse }: Pick<Told, 'kept' | 'keptElse'>, direction: 1 | -1): Way[] {
  const own = byWarmth.indexOf(kept);
  const others = byWarmth.filter((_, i) => (i - own) * direction > 0);
  const nearest = direction === 1 ? others : others.toReversed();
  return nearest.flatMap((way) => keptElse.find((each) => each.kept === way) ?? []);
}

type Goal = Extract<HeatNote, { readonly code: 'heat.kept-else' }>['towards'];

/** The nearest way that is sure enough, or the best of them; and the warmth of the batter where none is. */
function towards(
  heat: Pick<Told, 'kept' | 'gel' | 'overheats'>,
  goal: Goal,
  ways: readonly Way[],
  chanceOf: (way: Way) => number,
  enough: number,
): HeatNote[] {
  const own = chanceOf({ kept: heat.kept, ...heat.gel, overheats: heat.overheats });
  const best = [...ways].sort((a, b) => chanceOf(b) - chanceOf(a))[0];
  const chosen = ways.find((way) => chanceOf(way) >= enough) ?? best;
  const helps = chosen !== undefined && chanceOf(chosen) >= own + WORTHWHILE;
  return [
    ...(helps
      ? [{ code: 'heat.kept-else', kept: chosen.kept, towards: goal, chance: chanceOf(chosen) } as const]
      : []),
    ...(helps && chanceOf(chosen) >= enough ? [] : [{ code: 'heat.pour', warmer: goal === 'gel' } as const]),
  ];
}
