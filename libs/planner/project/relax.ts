import type { Random } from '#units';
import type { Edge } from '../learning/lag-edges.js';
import type { Model } from './model.js';
import type { Project } from './project.js';

/**
 * The model with most of a schedule's order kept: of activities that are not free, those that follow each other on the
 * units of a resource keep doing so (Godard, Laborie and Nuijten, "Randomized large neighborhood search for cumulative
 * scheduling", ICAPS 2005). Starts can still shift.
 */
export function relaxed(
  project: Project,
  model: Model,
  starts: Int32Array,
  isFree: Uint8Array,
  random: Random,
): Model {
  const { dur } = project;
  const count = model.starts;
  const edges: Edge[] = [];
  let choices = count;
  let keeps = false;
  // The two edges of a choice stand next to each other.
  for (const edge of model.edges) {
    const { from, to, choice } = edge;
    if (choice < 0) {
      edges.push(edge);
      continue;
    }
    const [i, j] = [from >> 1, to >> 1];
    if ((choice & 1) === 0) {
      keeps = isFree[i] === 0 && isFree[j] === 0;
      if (!keeps) choices++;
    }
    if (!keeps) edges.push({ ...edge, choice: 2 * (choices - 1) + (choice & 1) });
    else if (starts[i]! + dur[i]! <= starts[j]!) edges.push({ ...edge, choice: -1 });
  }
  for (const [i, j] of chains(project, starts, isFree, random)) {
    edges.push({ from: 2 * i, to: 2 * j, weight: dur[i]!, choice: -1 });
  }
  const bounds = new Int32Array(2 * choices);
  bounds.set(model.bounds.subarray(0, 2 * count));
  for (let x = count; x < choices; x++) bounds[2 * x + 1] = -1;
  return { ...model, bounds, edges };
}

/** Who takes over units of a resource from whom, among those that are not free. */
function chains(
  { dur, cap, req }: Project,
  starts: Int32Array,
  isFree: Uint8Array,
  random: Random,
): [number, number][] {
  const links = new Set<number>();
  const kept = [...dur.keys()].filter((i) => dur[i]! > 0 && isFree[i] === 0);
  kept.sort((i, j) => starts[i]! - starts[j]!);
  cap.forEach((capacity, r) => {
    // Of each chain, who had its units last, and how many.
    const holders: { i: number; units: number }[] = [{ i: -1, units: capacity }];
    for (const j of kept) {
      let need = req[j]![r]!;
      if (need === 0) continue;
      const ended = holders.filter(
        ({ i, units }) => units > 0 && (i < 0 || starts[i]! + dur[i]! <= starts[j]!),
      );
      const first = Math.floor(random.next() * ended.length);
      for (let k = 0; need > 0; k++) {
        const holder = ended[(first + k) % ended.length]!;
        const taken = Math.min(need, holder.units);
        holder.units -= taken;
        need -= taken;
        if (holder.i >= 0) links.add(holder.i * dur.length + j);
      }
      holders.push({ i: j, units: req[j]![r]! });
    }
  });
  return [...links].map((link) => [Math.floor(link / dur.length), link % dur.length]);
}
