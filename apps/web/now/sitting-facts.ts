import type { PieceDesign, RunPlan, StageKind } from '#contract';
import { mouldOf } from '#contract/names';
import { makesPart } from '#runs';
import type { SheetWeigh } from '../run/sheet-sittings.js';
import type { WeighLine } from '../run/weigh-lines.js';
import type { WeighSection } from '../run/weigh-sections.js';
import type { BenchRun, BenchSitting, BenchStage } from './bench-view.js';

/** A run that something of a sitting is for. */
export interface SittingRun {
  readonly id: string;
  readonly title: string;
  readonly count: number;
  /** Keys of the moulds of the parts that are handled; where none of them has one, those of the whole piece. */
  readonly moulds: readonly string[];
}

/** The runs of which something is open in a sitting, in the order of doing. */
export function runsOf({ stages }: BenchSitting, runs: readonly BenchRun[]): SittingRun[] {
  const open = stages.filter(({ state }) => state === 'open');
  return [...new Set(open.map(({ runId }) => runId))].flatMap((id) => {
    const bench = runs.find(({ run }) => run.id === id);
    const plan = bench && planOf(bench);
    if (bench === undefined || plan === undefined) return [];
    const parts = new Set(open.filter(({ runId }) => runId === id).map(({ stage }) => stage.part));
    const ofParts = mouldsOf(bench.design, (part) => parts.has(part));
    const moulds = ofParts.length > 0 ? ofParts : mouldsOf(bench.design, () => true);
    return [{ id, title: plan.title, count: plan.count, moulds }];
  });
}

/** A run in a document that may hold others. */
export function planOf({ run, document }: BenchRun): RunPlan | undefined {
  return document.runs.find((each) => each.run === run.key);
}

function mouldsOf(design: PieceDesign | undefined, isMeant: (part: string) => boolean): string[] {
  const parts = design?.parts.filter(({ key }) => isMeant(key)) ?? [];
  return [...new Set(parts.flatMap((part) => mouldOf(part) ?? []))];
}

/** What lies on the bench besides moulds and materials. Goggles come with gloves. */
export const tools = [
  'goggles',
  'gloves',
  'mask',
  'scales',
  'jug',
  'pot',
  'bowl',
  'blender',
  'thermometer',
  'spatula',
  'cups',
  'cooker',
  'bag',
  'tweezers',
  'sieve',
  'spray',
  'pipette',
  'knife',
  'cutter',
  'stamp',
  'strips',
  'wrapping',
  'labels',
  'board',
] as const;
export type Tool = (typeof tools)[number];

/** What a kind of stage is done with, besides what weighing and mixing take. Common practice, no source. */
const toolsOf: Readonly<Partial<Record<StageKind, readonly Tool[]>>> = {
  'make-lye': ['goggles', 'jug', 'thermometer'],
  'melt-fats': ['pot', 'thermometer'],
  'melt-base': ['pot', 'thermometer'],
  mix: ['goggles', 'bowl', 'blender', 'thermometer', 'spatula'],
  split: ['goggles', 'cups', 'spatula'],
  cook: ['goggles', 'cooker', 'spatula'],
  rebatch: ['goggles', 'cooker', 'spatula'],
  'press-decor': ['gloves'],
  pour: ['goggles', 'spatula'],
  layer: ['goggles', 'spatula'],
  unmould: ['gloves', 'board'],
  patch: ['gloves', 'knife'],
  dip: ['gloves', 'bowl'],
  pipe: ['gloves', 'bag'],
  'set-in': ['gloves', 'tweezers'],
  sprinkle: ['mask', 'gloves', 'sieve'],
  mist: ['gloves', 'spray'],
  glaze: ['gloves', 'pipette'],
  turn: ['gloves', 'board'],
  cut: ['gloves', 'cutter'],
  stamp: ['gloves', 'stamp'],
  'zap-test': ['gloves', 'strips'],
  wrap: ['wrapping'],
  label: ['labels'],
};

/** What weighing some of a batch takes. Common practice, no source. */
const toolsToWeigh: Readonly<Record<'fats' | 'lye' | 'batter', readonly Tool[]>> = {
  fats: ['scales', 'pot'],
  lye: ['scales', 'goggles', 'jug'],
  batter: ['scales', 'bowl', 'blender', 'spatula'],
};

/** Tools for stages, each once, in their usual order. */
export function toolsFor(stages: readonly BenchStage[], weigh: readonly SheetWeigh[]): Tool[] {
  const found = new Set<Tool>([
    ...stages.flatMap(({ stage }) => toolsOf[stage.kind] ?? []),
    ...weigh.flatMap(({ card, kinds }) => {
      // What is melted or pressed alone is weighed, and not mixed.
      if ('part' in card && card.own === undefined)
        return card.part.kind === 'batch' ? [] : (['scales'] as const);
      return [...kinds].flatMap((kind) => toolsToWeigh[kind]);
    }),
  ]);
  if (found.has('goggles')) found.delete('gloves');
  return tools.filter((tool) => found.has(tool));
}

/** Moulds that something is poured into, and equipment that is asked for, by key and in the order of doing. */
export function gearFor(
  stages: readonly BenchStage[],
  runs: readonly BenchRun[],
): { readonly moulds: readonly string[]; readonly equipment: ReadonlyMap<string, number> } {
  const moulds = new Set<string>();
  const equipment = new Map<string, number>();
  for (const { runId, stage } of stages) {
    const design = runs.find(({ run }) => run.id === runId)?.design;
    const part = design?.parts.find(({ key }) => key === stage.part);
    const mould = part && mouldOf(part);
    if (mould !== undefined && makesPart(stage.kind)) moulds.add(mould);
    const needs = design?.stages.find(({ key }) => key === stage.key)?.needs ?? [];
    // They are free again when the stage is over: as many as the one that asks for most.
    for (const { equipment: key, count } of needs) {
      equipment.set(key, Math.max(count, equipment.get(key) ?? 0));
    }
  }
  return { moulds: [...moulds], equipment };
}

/** How much of each material there has to be, in the order in which it is first weighed. */
export function materialsFor(sections: readonly WeighSection[]): WeighLine[] {
  const found = new Map<string, WeighLine>();
  for (const { kind, lines } of sections) {
    for (const line of lines) {
      // What is taken off a batch has been weighed as something else.
      if (kind === 'portion' && line.key === 'batter') continue;
      const massG = line.massG + (found.get(line.key)?.massG ?? 0);
      found.set(line.key, { key: line.key, title: line.title, massG });
    }
  }
  return [...found.values()];
}
