/** One who answers one ask at a time, in order: a worker behind messages, or anything like it. */
export interface Answerer<A, B> {
  /** @param done called once for each ask */
  ask(what: A, done: (answer: B) => void): void;
}

/**
 * Asks one at a time and the newest next: what was asked in between and not begun is dropped. While asks come faster
 * than answers, answers still come, each to an ask newer than that of the one before.
 */
export class Lane<A, B> {
  private isBusy = false;
  private next: { readonly what: A } | undefined;

  /** @param heard is told each answer with its ask, and whether nothing newer waits */
  constructor(
    private readonly answerer: Answerer<A, B>,
    private readonly heard: (answer: B, what: A, isNewest: boolean) => void,
  ) {}

  ask(what: A): void {
    if (this.isBusy) {
      this.next = { what };
      return;
    }
    this.isBusy = true;
    this.answerer.ask(what, (answer) => this.answered(answer, what));
  }

  /** Forgets what waits; what is being answered is still told. */
  drop(): void {
    this.next = undefined;
  }

  private answered(answer: B, what: A): void {
    this.isBusy = false;
    const { next } = this;
    this.next = undefined;
    // The next is under way before anybody looks at this answer.
    if (next !== undefined) this.ask(next.what);
    this.heard(answer, what, next === undefined);
  }
}

/** Scenarios behind odds while something slides: as many as a quick answer allows. */
export const QUICK = { most: 400, least: 100, slowMs: 50, fastMs: 20 } as const;
/** What the API takes, and a plan of which the odds are to be relied on. */
export const THOROUGH = 2000;

/** How many scenarios the next quick answer has. @param tookMs what the last one took */
export function nextScenarios(now: number, tookMs: number): number {
  if (tookMs > QUICK.slowMs) return Math.max(QUICK.least, Math.round(now / 2));
  if (tookMs < QUICK.fastMs) return Math.min(QUICK.most, now * 2);
  return now;
}
