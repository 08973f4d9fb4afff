/** One line of a list of ingredients. */
export interface LabelIngredient {
  readonly key: string;
  readonly title: string;
  /** Its name on the label; absent: not known, so the title stands for it. */
  readonly inci?: string;
  readonly massG: number;
  /** Colourants come after all others, in any order. */
  readonly isColourant?: true;
}

/** The same ingredient once, most first, colourants last; what weighs nothing is left out. */
export function byMass(list: readonly LabelIngredient[]): LabelIngredient[] {
  const byName = new Map<string, LabelIngredient>();
  for (const each of list) {
    const name = each.inci ?? each.title;
    const before = byName.get(name);
    byName.set(name, before === undefined ? each : { ...before, massG: before.massG + each.massG });
  }
  const last = ({ isColourant }: LabelIngredient): number => (isColourant === true ? 1 : 0);
  return [...byName.values()]
    .filter(({ massG }) => massG > 1e-9)
    .sort((a, b) => last(a) - last(b) || b.massG - a.massG);
}
