import type { Clock } from '#nudges';

/** A clock that stands still until it is moved. */
export class HandClock implements Clock {
  #ms: number;

  constructor(at: string) {
    this.#ms = Date.parse(at);
  }

  now(): Date {
    return new Date(this.#ms);
  }

  /** The instant so many minutes from now. */
  in(minutes: number): Date {
    return new Date(this.#ms + minutes * 60_000);
  }

  advance(minutes: number): void {
    this.#ms += minutes * 60_000;
  }
}
