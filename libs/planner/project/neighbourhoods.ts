import type { Random } from '#units';
import { LearningSearch } from '../learning/learning-search.js';
import type { Propagator } from '../learning/propagator.js';
import type { Trail } from '../learning/trail.js';
import type { Best } from './best.js';
import { guideOf, type Model } from './model.js';
import type { Project } from './project.js';
import { relaxed } from './relax.js';
import { TimeTable } from './time-table.js';

/** Conflicts for one neighbourhood. */
const CONFLICTS = 300;

/** How many of them for a schedule as long. */
const MOVE_CONFLICTS = 50;

/** Activities freed at first, and at least. */
const FREED = 20;
const LEAST_FREED = 8;

/** How much more or less is freed after each. */
const STEP = 1.03;

/** By how much the edges of what is freed are blurred. */
const BLUR = 3;

/** What looking at a neighbourhood costs besides its conflicts, in conflicts. */
const SETUP = 50;

/**
 * Large-neighbourhood search (Shaw, CP 1998): frees some activities of the best schedule, keeps the order of the
 * others, and lets a search that learns look for something shorter. How many are freed follows from how hard that is.
 */
export class Neighbourhoods {
  private freed = FREED;
  /** As long as the best. */
  private current: Int32Array | null = null;

  constructor(
    private readonly project: Project,
    private readonly model: Model,
    private readonly random: Random,
  ) {}

  /** Looks for shorter schedules. @param budget about how many conflicts it may take @returns how many it took */
  improve(best: Best, budget: number, stop: () => boolean): number {
    let cost = 0;
    while (cost < budget && best.makespan > this.model.lowerBound && !stop()) {
      cost += SETUP + this.search(best, stop);
    }
    return cost;
  }

  /** First for another schedule as long, so as not to stay where nothing is left to find, then for shorter ones. */
  private search(best: Best, stop: () => boolean): number {
    const { project, model, random } = this;
    const sink = 2 * model.starts - 1;
    if (this.current === null || this.current.at(-1)! > best.makespan) this.current = best.starts!;
    const small = relaxed(project, model, this.current, this.choose(this.current), random);
    const watch = (trail: Trail): Propagator[] => [new TimeTable(trail, project, best.makespan)];
    const search = new LearningSearch({ ...small, watch }, random);
    search.require(sink, -best.makespan);
    let outcome = search.run(MOVE_CONFLICTS, stop);
    if (outcome !== 'solution') search.follow(guideOf(small, this.current));
    do {
      if (outcome === 'solution') {
        search.follow(search.solution());
        this.current = search.solution().slice(0, model.starts);
        best.improve(this.current);
      }
      search.require(sink, 1 - best.makespan);
      outcome = search.run(CONFLICTS - search.conflicts, stop);
    } while (outcome === 'solution');
    if (outcome === 'exhausted') this.freed = Math.min(this.freed * STEP, model.starts);
    else this.freed = Math.max(this.freed / STEP, LEAST_FREED);
    return search.conflicts;
  }

  /** Activities around a moment, give or take a little. */
  private choose(starts: Int32Array): Uint8Array {
    const { random, freed } = this;
    const { dur } = this.project;
    const isFree = new Uint8Array(starts.length);
    const moment = random.next() * starts.at(-1)!;
    const far = dur.map((d, i) => Math.abs(starts[i]! + d / 2 - moment) + random.next() * BLUR);
    const near = [...dur.keys()].sort((i, j) => far[i]! - far[j]!);
    for (const i of near.slice(0, freed)) isFree[i] = 1;
    return isFree;
  }
}
