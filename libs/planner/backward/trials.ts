import type { Draws } from '../draws.js';
import { RETEST_MIN } from '../tally.js';
import { CERTAINTIES } from '../plan.js';
import type { Problem, Schedule } from '../problem.js';
import { compileSimulation } from '../simulation-model.js';
import { place } from '../schedule.js';
import { simulator } from '../simulate.js';
import type { Stop } from './stop.js';

/** Scenarios after which the odds of what will not do are known well enough to compare. */
const ROUGH = 250;

/** What came of plans that begin at one minute. */
export interface Trial {
  /** Scenarios that the best of them is lived through on time, where that is as many as were asked for. */
  readonly met: number | undefined;
  /** Odds of the best, perhaps from a part of the scenarios only; -1: there is no schedule. */
  readonly estimate: number;
}

/**
 * Tries plans that begin at one minute or another. Placing costs little and simulating much, so a simulation ends soon
 * after enough scenarios are lost, and nothing is tried twice.
 */
export class Trials {
  private readonly byStarts = new Map<string, Trial>();
  private readonly byFrom = new Map<number, Trial>();

  constructor(
    private readonly p: Problem,
    private readonly draws: Draws,
    private readonly options: {
      readonly seed: number;
      readonly scenarios: number;
      readonly need: number;
      readonly stop: Stop;
    },
  ) {}

  /** The schedules that `plan` would weigh if nothing began before `from`, and whether one of them does. */
  at(from: number): Trial {
    const before = this.byFrom.get(from);
    if (before !== undefined) return before;
    let best: Trial = { met: undefined, estimate: -1 };
    for (const schedule of this.schedules(from)) {
      this.options.stop.check();
      const trial = this.lived(schedule);
      if (trial.estimate > best.estimate) best = trial;
    }
    this.byFrom.set(from, best);
    return best;
  }

  /** Whether there is any schedule at all from there. */
  hasPlan(from: number): boolean {
    return this.schedules(from).length > 0;
  }

  private schedules(from: number): Schedule[] {
    const p = { ...this.p, from };
    const { seed, stop } = this.options;
    return CERTAINTIES.flatMap((certainty) => {
      const found = place(p, { certainty, seed, stop: stop.isAsked });
      stop.check();
      return typeof found === 'object' ? [found] : [];
    });
  }

  private lived(schedule: Schedule): Trial {
    const { scenarios, need } = this.options;
    const key = this.p.stages.map(({ id }) => schedule.starts.get(id)).join(' ');
    const before = this.byStarts.get(key);
    if (before !== undefined) return before;
    const live = simulator(compileSimulation(this.p, schedule), this.draws, RETEST_MIN);
    let lost = 0;
    let k = 0;
    while (k < scenarios && (k < ROUGH || scenarios - lost >= need)) {
      const loss = live(k++);
      if (loss !== undefined && loss.loses !== 'preference') lost++;
    }
    const met = scenarios - lost >= need ? scenarios - lost : undefined;
    const trial = { met, estimate: 1 - lost / k };
    this.byStarts.set(key, trial);
    return trial;
  }
}
