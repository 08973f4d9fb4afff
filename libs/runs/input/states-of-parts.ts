import { closingStates } from '#contract';
import type { Part, PieceDesign, SoapState, StageKind } from '#contract';
import { makingStage } from './resolve-run.js';

/** States that only melted base has; everything else is soap. */
const ofGlaze: ReadonlySet<SoapState> = new Set(['glaze-set', 'glaze-turnable']);

/** Whether the clocks know a state of a kind of part; a wait for any other would wait for ever. */
export function stateHasClock(kind: Part['kind'], state: SoapState): boolean {
  if (kind === 'decor') return false;
  return ofGlaze.has(state) === (kind === 'melt-and-pour');
}

/** States whose title tells what the soap is until they come: they close a window. */
const closing: ReadonlySet<SoapState> = new Set([...closingStates, 'coat-tacky-until']);

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
  cuttable: ['pour', 'layer'],
  'cuttable-until': ['pour', 'layer'],
};

/** Whether a part as it is made here ever comes into a state. What is not cut has no time for it. */
export function comesInto(design: PieceDesign, part: Part, state: SoapState): boolean {
  if (!stateHasClock(part.kind, state)) return false;
  const kind = makingStage(design, part.key)?.kind;
  const kinds = onlyFor[state];
  if (kinds !== undefined && kind !== undefined && !kinds.includes(kind)) return false;
  const cut = design.stages.some((stage) => stage.kind === 'cut');
  return cut || (state !== 'cuttable' && state !== 'cuttable-until');
}
