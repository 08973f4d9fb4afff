import type { Random } from '#units';
import { Analysis } from './analysis.js';
import { Branching } from './branching.js';
import { Clauses } from './clauses.js';
import { LagEdges, type Edge } from './lag-edges.js';
import type { Propagator } from './propagator.js';
import { Kind, Trail } from './trail.js';

/** Conflicts in the shortest run between two restarts. */
const RESTART = 100;

/** Clauses kept at first, and how many more after each clearing. */
const ROOM = 4000;
const MORE_ROOM = 500;

/** How many decisions go by between two questions whether to stop. */
const PATIENCE = 16;

/** `exhausted`: no solution is left; `refuted`: none under the assumptions. */
export type Search = 'solution' | 'exhausted' | 'refuted' | 'limit';

/** What is searched: variables with bounds, lags between them, and whatever else watches over them. */
export interface SearchModel {
  /** How many of the variables, the first ones, are starts; the others follow from them or are choices. */
  readonly starts: number;
  /** Two for each variable, as on the trail. */
  readonly bounds: Int32Array;
  readonly edges: readonly Edge[];
  /** Makes the other constraints, in the order in which they are to be asked. */
  readonly watch: (trail: Trail) => readonly Propagator[];
}

/**
 * Search for values that learns a clause from every conflict (Schutt, Feydy, Stuckey and Wallace, "Solving
 * RCPSP/max by lazy clause generation", Journal of Scheduling 16, 2013).
 */
export class LearningSearch {
  readonly trail: Trail;
  conflicts = 0;
  /** After `refuted`: assumptions, as pairs, that cannot hold together. */
  core: readonly number[] = [];
  /** Told of every clause learned, as pairs of side and value of which one holds. */
  onLesson: ((literals: readonly number[]) => void) | null = null;
  private readonly edges: LagEdges;
  private readonly clauses: Clauses;
  private readonly propagators: readonly Propagator[];
  private readonly analysis: Analysis;
  private readonly branching: Branching;
  private head = 0;
  private room = ROOM;
  private restarts = 0;
  private decisions = 0;
  private isOver = false;
  private readonly onDrop = (side: number): void => {
    this.tell(side);
    this.branching.fell(side);
  };

  constructor({ starts, bounds, edges, watch }: SearchModel, random: Random) {
    this.trail = new Trail(bounds.slice());
    this.edges = new LagEdges(this.trail, edges);
    this.clauses = new Clauses(this.trail);
    this.propagators = watch(this.trail);
    this.branching = new Branching(this.trail, starts, random);
    this.analysis = new Analysis(this.trail, this.edges, this.clauses, (side, value) =>
      this.branching.seen(side, value),
    );
  }

  /** Only solutions in which the side is at least `value` are of interest from now on. */
  require(side: number, value: number): void {
    this.restart();
    if (!this.isOver && !this.trail.raise(side, value, Kind.given, 0)) this.isOver = true;
  }

  /** Values that the search turns to first. */
  follow(values: Int32Array): void {
    this.branching.follow(values);
  }

  /** The value of every variable, after `solution`. */
  solution(): Int32Array {
    return Int32Array.from({ length: this.trail.bound.length >> 1 }, (_, x) => this.trail.bound[2 * x]!);
  }

  /**
   * Until a solution is found, there is none, `limit` more conflicts are used up, or `stop` says so.
   * @param assumptions literals as pairs, to hold in this run only (Eén and Sörensson, "An extensible SAT-solver",
   *   SAT 2003)
   */
  run(limit: number, stop: () => boolean, assumptions: readonly number[] = []): Search {
    const { trail, branching } = this;
    if (limit <= 0 || stop()) return 'limit';
    const end = this.conflicts + limit;
    this.restart();
    let pause = this.conflicts + RESTART * luby(++this.restarts);
    for (;;) {
      if (this.isOver) return 'exhausted';
      if (!this.propagate()) {
        this.conflicts++;
        if (!this.learn()) this.isOver = true;
        continue;
      }
      if (this.conflicts >= end || (++this.decisions % PATIENCE === 0 && stop())) return 'limit';
      if (this.conflicts >= pause) {
        if (trail.level > 0) {
          branching.beforeRestart();
          this.restart();
          continue;
        }
        pause = this.conflicts + RESTART * luby(++this.restarts);
        if (this.clauses.count > this.room) {
          this.clauses.reduce();
          this.room += MORE_ROOM;
        }
      }
      if (2 * trail.level < assumptions.length) {
        if (this.assume(assumptions)) continue;
        return 'refuted';
      }
      const decision = branching.next();
      if (decision === null) return 'solution';
      trail.newLevel();
      trail.raise(decision[0], decision[1], Kind.given, 0);
    }
  }

  /** One more level, on which the next assumption holds. @returns false, with the core set, when it cannot */
  private assume(assumptions: readonly number[]): boolean {
    const { trail } = this;
    const [side, value] = [assumptions[2 * trail.level]!, assumptions[2 * trail.level + 1]!];
    if (trail.bound[side ^ 1]! >= 1 - value) {
      this.core = [...this.analysis.assumptionsBehind(side ^ 1, 1 - value), side, value];
      return false;
    }
    trail.newLevel();
    trail.raise(side, value, Kind.given, 0);
    return true;
  }

  private restart(): void {
    this.backtrack(0);
  }

  private backtrack(level: number): void {
    this.trail.backtrack(level, this.onDrop);
    this.head = Math.min(this.head, this.trail.size);
  }

  private propagate(): boolean {
    const { trail, edges, clauses, propagators } = this;
    for (;;) {
      while (this.head < trail.size) {
        const entry = this.head++;
        const side = trail.side[entry]!;
        this.tell(side);
        if (trail.top[side] !== entry) continue;
        if (!edges.propagate(side) || !clauses.propagate(side)) return false;
      }
      for (const propagator of propagators) {
        if (!propagator.propagate()) return false;
        if (this.head < trail.size) break;
      }
      if (this.head === trail.size) return true;
    }
  }

  private tell(side: number): void {
    for (const propagator of this.propagators) propagator.touch(side);
  }

  private learn(): boolean {
    const { trail, clauses } = this;
    const lesson = this.analysis.learn();
    if (lesson === null) return false;
    const { literals, level, spread } = lesson;
    this.onLesson?.(literals);
    this.backtrack(level);
    const [side, value] = [literals[0]!, literals[1]!];
    this.branching.decay();
    clauses.decay();
    if (literals.length === 2) return trail.raise(side, value, Kind.given, 0);
    return trail.raise(side, value, Kind.clause, clauses.add(literals, spread));
  }
}

/** The sequence 1 1 2 1 1 2 4 ... (Luby, Sinclair and Zuckerman, 1993), counted from 1. */
function luby(i: number): number {
  for (let power = 1; ; power *= 2) {
    if (i === 2 * power - 1) return power;
    if (i < 2 * power - 1) return luby(i - power + 1);
  }
}
