import type { Caution, Risk, RunPlan } from '#contract';
import { runPairs, type Compared } from './compared.js';

const levels: readonly Risk['level'][] = ['low', 'medium', 'high'];

/** A risk that was not there before, or was less. */
export interface NewRisk {
  /** Titles of the parts or batches that it is about. */
  readonly parts: readonly string[];
  readonly risk: Risk;
}

/** The risks that a change brings or makes worse; one that several parts share is told once. */
export function newRisks(compared: Compared): NewRisk[] {
  const found = new Map<string, { readonly titles: Set<string>; readonly risk: Risk }>();
  for (const { was, now } of runPairs(compared)) {
    const told = toldOf(was);
    for (const { of, title, risks } of toldOf(now)) {
      const before = told.find((each) => each.of === of)?.risks ?? [];
      for (const risk of risks) {
        const old = before.find(({ code }) => code === risk.code);
        if (old !== undefined && levels.indexOf(risk.level) <= levels.indexOf(old.level)) continue;
        const said = JSON.stringify(risk);
        const same = found.get(said) ?? { titles: new Set(), risk };
        found.set(said, same);
        same.titles.add(title);
      }
    }
  }
  return [...found.values()].map(({ titles, risk }) => ({ parts: [...titles], risk }));
}

/** What risks are told of: each batch, and each part of the piece. */
function toldOf({ batches = [], amounts }: RunPlan): {
  readonly of: string;
  readonly title: string;
  readonly risks: readonly Risk[];
}[] {
  return [
    ...batches.map(({ batch, title, risks }) => ({ of: `batch ${batch}`, title, risks })),
    ...amounts.map(({ part, title, risks }) => ({ of: `part ${part}`, title, risks })),
  ];
}

/** Cautions of runs, their batches and their stages that were not there before. */
export function newCautions(compared: Compared): Caution[] {
  const pairs = runPairs(compared);
  const before = new Set(pairs.flatMap(({ was }) => cautionsOf(was).map(({ code }) => code)));
  const after = new Map(
    pairs.flatMap(({ now }) => cautionsOf(now).map((each) => [each.code, each] as const)),
  );
  return [...after.values()].filter(({ code }) => !before.has(code));
}

/** Without a plan no stage has a place to show its cautions at; the batches and the run itself do. */
function cautionsOf({ cautions, batches = [], amounts, stages }: RunPlan): Caution[] {
  return [...cautions, ...[...batches, ...amounts, ...stages].flatMap((each) => each.cautions)];
}
