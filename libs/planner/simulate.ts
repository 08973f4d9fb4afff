import { medianAbove, type Draws } from './draws.js';
import { lastInRow, nextIn } from './domains.js';
import { DueStages } from './due-stages.js';
import { raise } from './fixed-point.js';
import type { Network } from './network.js';
import type { Loses, Requirement } from './problem.js';
import type { SimulationModel, UnattendedStage, UncertainLag } from './simulation-model.js';

/** Where a scenario was lost, what was missed there, and what that cost. */
export interface Loss {
  readonly stage: number;
  readonly missed: Requirement;
  readonly loses: Loses;
}

/**
 * Carries the plan out as the maker would, scenario by scenario, never knowing a draw before it shows. Stages come in
 * the order of their times, none before its planned start. When a stage is due, what is to have set by then and what
 * later stages wait for is tested: what is ready is ready; for the rest the median of what it may still take counts. If
 * that pushes the stage at hand, because something rigid hangs on it, the maker waits; else it is done. A stage that is
 * not ready is tried again `retestMin` later in the same hours, or when the hours next open.
 *
 * A missed requirement ends the scenario. A missed preference does not, nor a due date: nobody throws soap away because it is
 * late, and for its sake nothing is done in haste.
 * @param met told the starts of a scenario that missed no requirement, due dates apart; valid for the call only
 * @returns a function from scenario number to the worst loss, the first of its kind; undefined when all went as planned
 */
export function simulator(
  plan: SimulationModel,
  draws: Draws,
  retestMin: number,
  met: (starts: Float64Array) => void = () => undefined,
): (scenario: number) => Loss | undefined {
  const { likely, starts, uncertain, due, unattended } = plan;
  // A preference of known length has no draw.
  const values = uncertain.map(({ draw }) => draws.get(draw) ?? NO_DRAW);
  const world: World = {
    plan,
    retestMin,
    x: new Float64Array(likely.count),
    due: new DueStages(plan.rank, starts),
    done: new Uint8Array(likely.count),
    actual: new Float64Array(uncertain.length),
    waiting: new Int32Array(uncertain.length),
    waitingCount: 0,
    pushed: [],
    disliked: undefined,
    stuck: new Map(),
  };
  const limits = due.map(({ stage }): Loss => {
    const missed: Requirement = { kind: 'latest', stage: plan.p.stages[stage]!.id };
    return { stage, missed, loses: 'due-date' };
  });
  return (scenario) => {
    world.x.set(starts);
    world.due.reset();
    world.waitingCount = 0;
    world.disliked = undefined;
    world.done.fill(0);
    world.done.fill(1, likely.stageCount);
    for (const { stage } of unattended) {
      world.x[stage] = Infinity;
      world.done[stage] = 1;
      world.due.remove(stage);
    }
    for (let k = 0; k < uncertain.length; k++) {
      const { median, sigma } = uncertain[k]!;
      world.actual[k] = median * Math.exp(sigma * values[k]!.at(scenario));
    }
    for (let j = world.due.first(); j >= 0; j = world.due.first()) {
      const loss = attempt(world, j);
      if (loss) return loss;
    }
    for (const each of unattended) comeAbout(world, each);
    met(world.x);
    const late = due.findIndex(({ stage, latest }) => world.x[stage]! > latest);
    return limits[late] ?? world.disliked;
  };
}

/** What nobody does is there as soon as what it waits for has passed. */
function comeAbout({ x, actual }: World, { stage, earliest, after }: UnattendedStage): void {
  let at = earliest;
  for (const { from, minutes, lag } of after) {
    at = Math.max(at, x[from]! + minutes + (lag === undefined ? 0 : actual[lag]!));
  }
  x[stage] = Math.ceil(at);
}

const NO_DRAW = { at: () => 0 };

interface World {
  readonly plan: SimulationModel;
  readonly retestMin: number;
  /** Real starts of what is done, expected starts of the rest. */
  readonly x: Float64Array;
  /** The stages that are not done, by when they are due. */
  readonly due: DueStages;
  readonly done: Uint8Array;
  /** What each uncertain lag turns out to be. */
  readonly actual: Float64Array;
  /** Uncertain lags that have begun and whose stage waits for them. */
  readonly waiting: Int32Array;
  waitingCount: number;
  /** The stages that `foresee` raised. */
  readonly pushed: number[];
  /** The first preference that was missed. */
  disliked: Loss | undefined;
  /** The loss of each stage that could not start any later, as far as there was one. */
  readonly stuck: Map<number, Loss>;
}

/** Does stage `j` if it is ready and wise, or moves it on. */
function attempt(world: World, j: number): Loss | undefined {
  const { x, plan } = world;
  const now = x[j]!;
  const late = unready(world, j, now);
  if (late !== undefined) return moveOn(world, j, late);
  if (foresee(world, now)) {
    const loss = push(world, world.pushed);
    if (loss) return loss;
    if (x[j]! > now) {
      const at = nextIn(plan.likely.domains[j]!, Math.max(x[j]!, now + world.retestMin));
      if (Number.isNaN(at)) return stuckAt(world, j);
      x[j] = at;
      world.due.move(j, at);
      return push(world, [j]);
    }
  }
  finish(world, j);
  return missedBy(world, j);
}

function finish(world: World, j: number): void {
  const { plan, done, waiting } = world;
  done[j] = 1;
  world.due.remove(j);
  if (plan.waitsFor[j]!.length > 0) {
    let kept = 0;
    for (let w = 0; w < world.waitingCount; w++) {
      if (plan.to[waiting[w]!] !== j) waiting[kept++] = waiting[w]!;
    }
    world.waitingCount = kept;
  }
  for (const k of plan.begins[j]!) if (done[plan.to[k]!] === 0) waiting[world.waitingCount++] = k;
}

/** The lag that stage `j`, not done yet, would have to wait for and that has not come about by now. */
function unready({ plan, done, x, actual }: World, j: number, now: number): number | undefined {
  for (const k of plan.waitsFor[j]!) {
    const from = plan.from[k]!;
    if (done[from] === 1 && x[from]! + plan.offset[k]! + actual[k]! > now) return k;
  }
  return undefined;
}

/** The next test of stage `j` that matters: between two tests nothing else is due. */
function moveOn(world: World, j: number, k: number): Loss | undefined {
  const { x, plan, actual, due, retestMin } = world;
  const { from, offset, requirement } = plan.uncertain[k]!;
  const readyAt = x[from]! + offset + actual[k]!;
  due.remove(j);
  const other = due.firstAt();
  const domain = plan.likely.domains[j]!;
  let at = x[j]!;
  do {
    // In one stretch of hours tests come evenly: on to the last one that finds nothing.
    const idle = Math.min(Math.ceil(readyAt) - 1, other, lastInRow(domain, at));
    at += retestMin * Math.max(0, Math.floor((idle - at) / retestMin));
    at = nextIn(domain, at + retestMin);
  } while (at < readyAt && at <= other);
  if (Number.isNaN(at)) return { stage: j, missed: requirement, loses: 'requirement' };
  x[j] = at;
  due.move(j, at);
  return push(world, [j]);
}

/**
 * Raises the stages that wait for something not ready yet to when it is likely to be: `pushed`.
 * @returns whether there are any
 */
function foresee(world: World, now: number): boolean {
  const { plan, x, actual, due, waiting, waitingCount, pushed } = world;
  let isFirst = true;
  for (let w = 0; w < waitingCount; w++) {
    const k = waiting[w]!;
    const since = x[plan.from[k]!]! + plan.offset[k]!;
    if (since > now || since + actual[k]! <= now) continue;
    const to = plan.to[k]!;
    const likely = since + likelyLength(plan.uncertain[k]!, now - since);
    if (likely <= x[to]!) continue;
    const at = nextIn(plan.likely.domains[to]!, Math.ceil(likely));
    if (at > x[to]!) {
      x[to] = at;
      due.move(to, at);
      if (isFirst) pushed.length = 0;
      isFirst = false;
      pushed.push(to);
    }
  }
  return !isFirst;
}

/** The median of a length that has lasted `elapsed` minutes and has not come about. */
function likelyLength({ median, sigma, below, likely }: UncertainLag, elapsed: number): number {
  if (elapsed <= 0) return median;
  let length = likely.get(elapsed);
  if (length === undefined) {
    length = median * Math.exp(sigma * medianAbove(Math.log(elapsed / median) / sigma, below));
    likely.set(elapsed, length);
  }
  return length;
}

/** Lets the rest of the plan follow: as expected if that can be, else as far as the known lags ask. */
function push(world: World, seeds: readonly number[]): Loss | undefined {
  const { plan, x, done } = world;
  let stuck = -1;
  for (const net of plan.expected) {
    stuck = raise(net, x, seeds, done);
    if (stuck < 0) {
      follow(world, net);
      return undefined;
    }
    const { touched, touchedCount, before } = net.scratch;
    for (let k = 0; k < touchedCount; k++) x[touched[k]!] = before[touched[k]!]!;
  }
  return stuckAt(world, stuck);
}

function follow({ x, due, done }: World, { scratch: { touched, touchedCount } }: Network): void {
  for (let k = 0; k < touchedCount; k++) {
    const i = touched[k]!;
    if (done[i] === 0) due.move(i, x[i]!);
  }
}

/** What is broken now that stage `j` has started: a known lag to, or an uncertain one from, what was done before. */
function missedBy(world: World, j: number): Loss | undefined {
  const { plan, x, done, actual } = world;
  const broken = brokenEdge(plan.certain, x, done, j);
  if (broken) return { stage: j, missed: broken, loses: 'requirement' };
  for (const k of plan.touching[j]!) {
    const from = plan.from[k]!;
    const to = plan.to[k]!;
    if (done[from] === 0 || done[to] === 0) continue;
    const passed = x[to]! - (x[from]! + plan.offset[k]!);
    const { side, isPreference, requirement } = plan.uncertain[k]!;
    if (side === 'at-least' ? passed >= actual[k]! : passed <= actual[k]!) continue;
    if (!isPreference) return { stage: j, missed: requirement, loses: 'requirement' };
    world.disliked ??= { stage: j, missed: requirement, loses: 'preference' };
  }
  return undefined;
}

function brokenEdge(net: Network, x: Float64Array, done: Uint8Array, j: number): Requirement | undefined {
  for (const e of net.out[j]!) {
    const i = net.to[e]!;
    if (done[i] === 1 && x[i]! < x[j]! + net.weight[e]!) return net.tags[e] ?? undefined;
  }
  return undefined;
}

/** The loss of a stage that cannot start any later: one object each, so that losses can be counted by what was missed. */
function stuckAt({ plan, stuck }: World, stage: number): Loss {
  let loss = stuck.get(stage);
  if (loss === undefined) {
    stuck.set(stage, (loss = { stage, missed: limitIn(plan, stage), loses: 'requirement' }));
  }
  return loss;
}

function limitIn(plan: SimulationModel, i: number): Requirement {
  const stage = plan.p.stages[i]!;
  if (stage.fixed !== undefined) return { kind: 'fixed', stage: stage.id };
  if (stage.latest !== undefined && stage.latest <= plan.p.until) return { kind: 'latest', stage: stage.id };
  return { kind: 'horizon' };
}
