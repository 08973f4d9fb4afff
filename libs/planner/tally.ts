import { deliveriesOf } from './deliveries.js';
import type { Draws } from './draws.js';
import type { Loses, Odds, Problem, Requirement, Schedule } from './problem.js';
import { compileSimulation } from './simulation-model.js';
import { simulator, type Loss } from './simulate.js';

/** Minutes until something that was not firm is touched again. Common practice, no source. */
export const RETEST_MIN = 30;

/** What comes about in so many scenarios can be counted on. */
const COUNTED_ON = 0.9;

/** How a scenario came out, from the worst: 0 a requirement was missed, 1 a due date, 2 a preference, 3 nothing. */
export const AT_ALL = 1;
export const ON_TIME = 2;
export const AS_PLANNED = 3;
const outcomes: Readonly<Record<Loses, number>> = { requirement: 0, 'due-date': 1, preference: ON_TIME };

/** How a schedule fares, scenario by scenario: those asked for so far. */
export class Tally {
  /** By scenario: how it came out. */
  readonly outcomes: Uint8Array;
  scenarios = 0;
  private readonly live: (scenario: number) => Loss | undefined;
  private readonly lost = new Map<number, Map<Loses, Map<Requirement, number>>>();
  /** When the last stage of each delivery started, in the scenarios that met every requirement. */
  private readonly lasts: { readonly stage: number; readonly starts: number[] }[];
  /** How many scenarios came out so or better. */
  private readonly counts = [0, 0, 0, 0];

  /** @param most scenarios that will be asked for */
  constructor(
    private readonly p: Problem,
    s: Schedule,
    draws: Draws,
    most: number,
    retestMin = RETEST_MIN,
  ) {
    const model = compileSimulation(p, s);
    this.lasts = deliveriesOf(p).map((stages) => ({
      stage: stages.reduce((a, b) => (model.rank[b]! > model.rank[a]! ? b : a)),
      starts: [],
    }));
    this.live = simulator(model, draws, retestMin, (x) => {
      for (const { stage, starts } of this.lasts) starts.push(x[stage]!);
    });
    this.outcomes = new Uint8Array(most);
  }

  /** Goes on to the first `scenarios` scenarios. */
  simulate(scenarios: number): this {
    for (; this.scenarios < scenarios; this.scenarios++) {
      const loss = this.live(this.scenarios);
      const outcome = loss === undefined ? AS_PLANNED : outcomes[loss.loses];
      this.outcomes[this.scenarios] = outcome;
      for (let k = 0; k <= outcome; k++) this.counts[k]!++;
      if (loss !== undefined) this.count(loss);
    }
    return this;
  }

  private count({ stage, loses, missed }: Loss): void {
    let ofStage = this.lost.get(stage);
    if (ofStage === undefined) this.lost.set(stage, (ofStage = new Map<Loses, Map<Requirement, number>>()));
    let reasons = ofStage.get(loses);
    if (reasons === undefined) ofStage.set(loses, (reasons = new Map<Requirement, number>()));
    reasons.set(missed, (reasons.get(missed) ?? 0) + 1);
  }

  /** Share of scenarios so far that came out so or better. */
  shareOf(least: number): number {
    return this.counts[least]! / this.scenarios;
  }

  private countOn(): Map<string, number> {
    return new Map(
      this.lasts.flatMap(({ stage, starts }) => {
        if (starts.length === 0) return [];
        const sorted = Float64Array.from(starts).sort();
        return [[this.p.stages[stage]!.id, sorted[Math.ceil(sorted.length * COUNTED_ON) - 1]!] as const];
      }),
    );
  }

  /** @param seed of the draws */
  odds(seed: number): Odds {
    const { p, scenarios } = this;
    const [atAll, onTime, asPlanned] = [AT_ALL, ON_TIME, AS_PLANNED].map((least) => this.shareOf(least)) as [
      number,
      number,
      number,
    ];
    const losses = [...this.lost].flatMap(([stage, byKind]) =>
      [...byKind].map(([loses, reasons]) => {
        const count = [...reasons.values()].reduce((sum, each) => sum + each, 0);
        return { stage: p.stages[stage]!.id, share: count / scenarios, loses, missed: mostMissed(reasons) };
      }),
    );
    return {
      ...{ atAll, onTime, asPlanned },
      countOn: this.countOn(),
      standardError: Math.sqrt((onTime * (1 - onTime)) / scenarios),
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
