import { withValue, type Value } from '../../../form/values.js';
import { shareOf, withAddition, withRole, withStageIn, type Addition } from './additions.js';
import type { PieceTitles } from './piece-titles.js';

/** What a pattern has to be told besides recipe, mould and amounts. */
export type Question = 'layers' | 'colours' | 'pieces';

interface Pattern {
  readonly asks: readonly Question[];
  /** What is put onto what was cast. */
  readonly additions: readonly Addition[];
  readonly isCut?: true;
  /** Two cavities make one piece, and what is put into them holds them together. */
  readonly isOfHalves?: true;
}

/** Ways in which pieces are usually built. Common practice, no source. */
export const patterns = {
  cast: { asks: [], additions: [] },
  layers: { asks: ['layers'], additions: [] },
  loaf: { asks: ['layers', 'pieces'], additions: [], isCut: true },
  swirl: { asks: ['colours', 'pieces'], additions: [], isCut: true },
  coated: { asks: [], additions: ['coat'] },
  piped: { asks: [], additions: ['piping'] },
  halves: { asks: [], additions: ['filling'], isOfHalves: true },
  decor: { asks: [], additions: ['decor'] },
  embeds: { asks: [], additions: ['embed'] },
} as const satisfies Readonly<Record<string, Pattern>>;

export type PatternName = keyof typeof patterns;
export const patternNames = Object.keys(patterns) as readonly PatternName[];

/** What the maker answers; what is left open is asked for when the design is saved. */
export interface Answers {
  readonly recipe?: string | undefined;
  readonly mould?: string | undefined;
  /** 1 to 12; those of another pattern are of no account. */
  readonly layers?: number | undefined;
  /** 2 to 12, of one pour. */
  readonly colours?: number | undefined;
  /** Pieces cut from one cavity. */
  readonly pieces?: number | undefined;
}

export const MOST_LAYERS = 12;

/** Parts and stages of a piece that is built after a pattern, in the order in which they are made and done. */
export function designAfter(name: PatternName, answers: Answers, titles: PieceTitles): Value {
  const pattern: Pattern = patterns[name];
  const layers = pattern.asks.includes('layers')
    ? Math.min(MOST_LAYERS, Math.max(1, Math.round(answers.layers ?? 2)))
    : 1;
  const colours = Math.min(MOST_LAYERS, Math.max(2, Math.round(answers.colours ?? 3)));
  const cast = {
    kind: 'batch',
    ...(answers.recipe !== undefined && { recipe: answers.recipe }),
    ...(answers.mould !== undefined && { mould: answers.mould }),
    ...(pattern.asks.includes('pieces') && { piecesPerCavity: answers.pieces ?? 8 }),
    ...(pattern.asks.includes('colours') && { portions: portionsOf(colours, titles) }),
    ...(pattern.isOfHalves === true && { cavitiesPerPiece: 2 }),
    amount: { by: 'cavity', fillPercent: layers === 1 ? 100 : shareOf(layers) },
  };
  let design: Value = { parts: [], stages: [], links: [], waits: [] };
  const stage = (kind: Parameters<typeof withStageIn>[1]): void => {
    const { parts, stages } = design as { readonly parts: Value[]; readonly stages: Value[] };
    design = withStageIn(design, kind, stages.length, parts.at(-1), titles);
  };
  for (let number = 1; number <= layers; number += 1) {
    design = withRole(design, layers === 1 ? 'base' : 'layer', titles, cast);
    stage(number === 1 ? 'pour' : 'layer');
  }
  stage('unmould');
  if (pattern.isCut === true) stage('cut');
  design = pattern.additions.reduce<Value>((before, each) => withAddition(before, each, titles), design);
  if (pattern.isOfHalves !== true) return design;
  stage('set-in');
  const { stages } = design as { readonly stages: readonly Value[] };
  return withValue(design, ['stages', stages.length - 1, 'title'], titles.joinHalves);
}

/** Colours of one pour, evenly shared; the last takes what is left. */
function portionsOf(count: number, titles: PieceTitles): Value[] {
  return Array.from({ length: count }, (_, i) => ({
    key: `colour-${String(i + 1)}`,
    title: `${titles.colour} ${String(i + 1)}`,
    ...(i < count - 1 && { sharePercent: shareOf(count) }),
  }));
}
