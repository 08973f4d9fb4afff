import type { Random } from '#units';
import { LearningSearch } from '../learning/learning-search.js';
import type { Propagator } from '../learning/propagator.js';
import type { Trail } from '../learning/trail.js';
import { alongLags, aroundMoment, neighboursOf } from './choose-freed.js';
import type { Best } from './best.js';
import { guideOf, type Model } from './model.js';
import type { Project } from './project.js';
import { relaxed } from './relax.js';
import { TimeTable } from './time-table.js';

/** Conflicts for one neighbourhood. */
const CONFLICTS = 100;

/** How many of them for a schedule as long. */
const MOVE_CONFLICTS = 50;

/** Activities freed at first, and at least. */
const FREED = 20;
const LEAST_FREED = 8;

/** How much more or less is freed after each. */
const STEP = 1.03;

/** How often what hangs together is freed, with maximum lags and without; else what stands around a moment. */
const WALKING_TIED = 0.5;
const WALKING_LOOSE = 0.2;

/** A way to choose what is freed, and how many that are at present. */
interface FreedKind {
  size: number;
  readonly choose: (starts: Int32Array, size: number) => Uint8Array;
}

/** What looking at a neighbourhood costs besides its conflicts, in conflicts. */
const SETUP = 50;

/**
 * Large-neighbourhood search (Shaw, CP 1998): frees some activities of the best schedule, keeps the order of the
 * others, and lets a search that learns look for something shorter. How many are freed follows from how hard that is.
 */
export class Neighbourhoods {
  private readonly moments: FreedKind;
  private readonly walks: FreedKind;
  private readonly walking: number;
  /** As long as the best. */
  private current: Int32Array | null = null;

  constructor(
    private readonly project: Project,
    private readonly model: Model,
    private readonly random: Random,
  ) {
    const { dur } = project;
    const near = neighboursOf(project);
    this.walking = project.lags.some(([, , w]) => w < 0) ? WALKING_TIED : WALKING_LOOSE;
    this.moments = { size: FREED, choose: (starts, size) => aroundMoment(starts, size, dur, random) };
    this.walks = { size: FREED, choose: (starts, size) => alongLags(starts, size, dur, near, random) };
  }

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
    const kind = random.next() < this.walking ? this.walks : this.moments;
    const isFree = kind.choose(this.current, kind.size);
    const small = relaxed(project, model, this.current, isFree, random);
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
    if (outcome === 'exhausted') kind.size = Math.min(kind.size * STEP, model.starts);
    else kind.size = Math.max(kind.size / STEP, LEAST_FREED);
    return search.conflicts;
  }
}
