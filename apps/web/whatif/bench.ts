import { Lane, nextScenarios, QUICK, THOROUGH } from './lane.js';
import type { Ask, FromWorker, Outcome } from './messages.js';
import { PlannerWorker, type WorkerAsk } from './planner-worker.js';

/** What is known of what would be. */
export interface Told {
  readonly ask: Ask;
  readonly outcome: Outcome;
  /** With all scenarios, and the latest start where that was asked for. */
  readonly isThorough: boolean;
}

/** Nothing new for so long: it has come to rest. */
const REST_MS = 220;

/** An ask on its way, with the one that it stands for and its place among all. */
interface Sent extends WorkerAsk {
  readonly original: Ask;
  readonly number: number;
}

/**
 * Two workers: one answers at once while something slides, the other in full once it has come to rest, so that a long
 * answer never stands in the way of a quick one.
 */
export class WhatIfBench {
  private readonly quickWorker = new PlannerWorker();
  private readonly thoroughWorker = new PlannerWorker();
  private readonly quick: Lane<Sent, FromWorker>;
  private readonly thorough: Lane<Sent, FromWorker>;
  private scenarios: number = QUICK.most;
  private rest: ReturnType<typeof setTimeout> | undefined;
  private asked = 0;
  private told = 0;
  /** What was last counted back to; the quick answers begin there. */
  private begin: number | undefined;

  constructor(
    private readonly tell: (what: Told) => void,
    private readonly broken: (message: string) => void,
  ) {
    this.quick = new Lane<Sent, FromWorker>(this.quickWorker, (answer, sent) => {
      if (answer.kind === 'answer') this.scenarios = nextScenarios(this.scenarios, answer.tookMs);
      this.heard(answer, sent, false);
    });
    this.thorough = new Lane<Sent, FromWorker>(this.thoroughWorker, (answer, sent) =>
      this.heard(answer, sent, true),
    );
  }

  /** Asks; answers come as they are ready, the quick before the thorough. */
  ask(original: Ask): void {
    const number = ++this.asked;
    clearTimeout(this.rest);
    this.thorough.drop();
    this.quick.ask({ ...this.withoutSearch(original), original, number, scenarios: this.scenarios });
    this.rest = setTimeout(() => {
      this.thorough.ask({ ...original, original, number, scenarios: THOROUGH });
    }, REST_MS);
  }

  end(): void {
    clearTimeout(this.rest);
    this.quickWorker.end();
    this.thoroughWorker.end();
  }

  private heard(answer: FromWorker, { original, number }: Sent, isThorough: boolean): void {
    if (answer.kind === 'broken') return this.broken(answer.message);
    // While it slides, a thorough answer to what it was before would be a step back; so would a quick one after it.
    if (isThorough ? number < this.asked : number <= this.told) return;
    this.told = number;
    const { latest } = answer.outcome.ok ? answer.outcome : {};
    if (latest !== undefined) this.begin = Math.floor(Date.parse(latest.beginAt ?? '') / 60_000) || undefined;
    this.tell({ ask: original, outcome: answer.outcome, isThorough });
  }

  /** Counting back takes seconds, so the quick answer begins where it came out last. */
  private withoutSearch(ask: Ask): Ask {
    const { wish } = ask;
    if (wish.kind === 'run' || wish.latestWithOdds === undefined) return ask;
    const nowMin = Math.max(ask.nowMin, this.begin ?? 0);
    return { ...ask, nowMin, wish: { ...wish, latestWithOdds: undefined } };
  }
}
