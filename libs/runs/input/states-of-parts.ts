import { closingStates } from '#contract';
import type { Part, PieceDesign, SoapState, StageKind } from '#contract';
import { countsFrom } from './counts-from.js';
import { makingStage } from './resolve-run.js';
import { startingStage } from './stage-order.js';

/** States that only melted base has; everything else is soap. */
const ofMelt: ReadonlySet<SoapState> = new Set(['glaze-set', 'glaze-turnable', 'melt-firm']);

/** Whether the clocks know a state of a kind of part; a wait for any other would wait for ever. */
export function stateHasClock(kind: Part['kind'], state: SoapState): boolean {
  if (kind === 'decor') return false;
  return ofMelt.has(state) === (kind === 'melt-and-pour');
}

/** States that are told by what they bring, though a stage may have to come before them. */
const toldByWhatComes: ReadonlySet<SoapState> = new Set(['medium-trace', 'thick-trace', 'stiff', 'skinned']);

/** States whose title tells what the soap is until they come: they close a window. */
const closing: ReadonlySet<SoapState> = new Set(closingStates.filter((state) => !toldByWhatComes.has(state)));

export function isClosing(state: SoapState): boolean {
  return closing.has(state);
}

/** States that only some ways of making a part lead to. */
const onlyFor: Partial<Readonly<Record<SoapState, readonly StageKind[]>>> = {
  'coat-tacky-until': ['dip'],
  'coat-turnable': ['dip'],
  'piping-skinned': ['pipe'],
  'piping-firm': ['pipe'],
  'piping-turnable': ['pipe'],
  'holds-layer': ['pour', 'layer'],
  'takes-decor-until': ['pour', 'layer'],
  'bonds-until': ['pour', 'layer'],
  skinned: ['pour', 'layer'],
  firm: ['pour', 'layer'],
  patchable: ['pour', 'layer'],
  'pliable-until': ['pour', 'layer'],
  handled: ['pour', 'layer'],
  'melt-firm': ['pour', 'layer'],
  cuttable: ['pour', 'layer'],
  'cuttable-until': ['pour', 'layer'],
};

/** Whether a part as it is made here ever comes into a state. What is not cut has no time for it. */
export function comesInto(design: PieceDesign, part: Part, state: SoapState): boolean {
  if (!stateHasClock(part.kind, state)) return false;
  const beginning = countsFrom(state);
  // A batter that is mixed as it is poured is counted from the lye that goes in, which the maker tells.
  const isPrepared = beginning !== 'making' && beginning !== 'unmoulding' && beginning !== 'mix';
  if (isPrepared && startingStage(design, part.key, state) === undefined) return false;
  const kind = makingStage(design, part.key)?.kind;
  const kinds = onlyFor[state];
  if (kinds !== undefined && kind !== undefined && !kinds.includes(kind)) return false;
  const cut = design.stages.some((stage) => stage.kind === 'cut');
  return cut || (state !== 'cuttable' && state !== 'cuttable-until');
}
