/** Thrown by `Stop.check`, and caught by who made the stop: out of many nested questions at once. */
export class Stopped extends Error {}

/** Ends a search of many steps as soon as the caller says so. What a step found by then may be poorer, so it is dropped. */
export class Stop {
  /** @param isAsked whether to stop; once it says true, it goes on saying so */
  constructor(readonly isAsked: () => boolean) {}

  /** @throws Stopped once it is asked for */
  check(): void {
    if (this.isAsked()) throw new Stopped();
  }
}
