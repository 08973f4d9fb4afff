import type { Draws } from './draws.js';
import type { Odds, Problem, Requirement, Schedule } from './problem.js';
import { compileSimulation } from './simulation-model.js';
import { simulator, type Loss } from './simulate.js';

/** Minutes until something that was not firm is touched again. Common practice, no source. */
export const RETEST_MIN = 30;

/** How a schedule fares, scenario by scenario: those asked for so far. */
export class Tally {
  /** By scenario: 1 where every window was met. */
  readonly met: Uint8Array;
  scenarios = 0;
  private readonly live: (scenario: number) => Loss | undefined;
  private readonly lost = new Map<number, Map<Requirement, number>>();
  private metCount = 0;

  /** @param most scenarios that will be asked for */
  constructor(
    private readonly p: Problem,
    s: Schedule,
    draws: Draws,
    most: number,
    retestMin = RETEST_MIN,
  ) {
    this.live = simulator(compileSimulation(p, s), draws, retestMin);
    this.met = new Uint8Array(most);
  }

  /** Goes on to the first `scenarios` scenarios. */
  simulate(scenarios: number): this {
    for (; this.scenarios < scenarios; this.scenarios++) {
      const loss = this.live(this.scenarios);
      if (loss === undefined) {
        this.met[this.scenarios] = 1;
        this.metCount++;
        continue;
      }
      let reasons = this.lost.get(loss.stage);
      if (reasons === undefined) this.lost.set(loss.stage, (reasons = new Map<Requirement, number>()));
      reasons.set(loss.missed, (reasons.get(loss.missed) ?? 0) + 1);
    }
    return this;
  }

  /** Share of scenarios met so far. */
  get probability(): number {
    return this.metCount / this.scenarios;
  }

  /** @param seed of the draws */
  odds(seed: number): Odds {
    const { p, scenarios, probability } = this;
    const losses = [...this.lost].map(([stage, reasons]) => {
      const count = [...reasons.values()].reduce((sum, each) => sum + each, 0);
      return { stage: p.stages[stage]!.id, share: count / scenarios, missed: mostMissed(reasons) };
    });
    return {
      probability,
      standardError: Math.sqrt((probability * (1 - probability)) / scenarios),
      scenarios,
      seed,
      losses: losses.sort((a, b) => b.share - a.share),
    };
  }
}

/** The requirement missed most often; one that came in several copies counts as one. */
function mostMissed(reasons: ReadonlyMap<Requirement, number>): Requirement {
  const byText = new Map<string, { missed: Requirement; count: number }>();
  for (const [missed, count] of reasons) {
    const key = JSON.stringify(missed);
    byText.set(key, { missed, count: count + (byText.get(key)?.count ?? 0) });
  }
  return [...byText.values()].reduce((a, b) => (b.count > a.count ? b : a)).missed;
}
