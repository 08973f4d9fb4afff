/**
 * What the planner is asked: stages with hands-on times, lags of either kind between them, resources,
 * and the hours in which stages may be done. The planner knows nothing of soap.
 *
 * All times are whole minutes on one line (`Minute` as a plain number here, for speed); durations are
 * whole minutes, 0 or more. Literature: resource-constrained scheduling with minimum and maximum time
 * lags (RCPSP/max), with calendars and with uncertain lags.
 */

/** A half-open stretch of time, [from, to). */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Something done in one go. It occupies [start, start + duration). */
export interface Stage {
  readonly id: string;
  readonly duration: number;
  /** Resources in use while it is done. */
  readonly uses: readonly Use[];
  /** The calendar in one of whose intervals it must lie whole. Absent: any time will do. */
  readonly calendar?: string;
  /** Not to start before this minute. */
  readonly earliest?: number;
  /** Not to start after this minute. */
  readonly latest?: number;
  /** What starts after `latest` is late and no more: a plan keeps to it, but what comes of the plan late is not lost. */
  readonly isDue?: true;
  /** Started at this minute for good: done, or promised. Lags between fixed stages are history, not checked. */
  readonly fixed?: number;
  /** Where the previous plan had it; ties are broken towards it. */
  readonly previous?: number;
}

export interface Use {
  readonly resource: string;
  readonly amount: number;
}

/** A length of time: known, or a log-normal whose outcome only shows when it has come about. */
export type Length =
  | { readonly kind: 'known'; readonly minutes: number }
  | {
      readonly kind: 'uncertain';
      /** Median, in minutes, above 0. */
      readonly median: number;
      /** Standard deviation of the logarithm, above 0. */
      readonly sigma: number;
      /** Name of the standard normal variable behind it; lengths with the same name vary together. */
      readonly draw: string;
    };

/** As much of a draw as it has in common with others: so many standard deviations of the standard normal variable `of`. */
export interface Share {
  readonly of: string;
  /** Above 0 and at most 1. */
  readonly share: number;
}

/** What has been observed of a draw: it lies in (above, below), in standard deviations. */
export interface Truncation {
  readonly above?: number;
  readonly below?: number;
}

/**
 * start(to) ≥ point(from) + atLeast and until(to) ≤ point(from) + atMost, where point is the start or the
 * end of `from`, and until that of `to`.
 */
export interface Lag {
  readonly id: string;
  readonly from: string;
  readonly point: 'start' | 'end';
  readonly to: string;
  readonly atLeast?: Length;
  readonly atMost?: Length;
  /** What must come in time; absent: the start. */
  readonly until?: 'start' | 'end';
  /** `atMost` is a preference: a plan keeps to it where it can, and what comes later than that is not lost. */
  readonly isPreference?: true;
}

/** A resource held from the start of one stage to the end of another: a cavity from pour to unmould. */
export interface Hold {
  readonly id: string;
  readonly resource: string;
  readonly amount: number;
  readonly from: string;
  readonly to: string;
}

export interface Resource {
  readonly id: string;
  readonly capacity: number;
  /** Taken by what this problem does not decide: other runs, promises. */
  readonly busy: readonly (Interval & { readonly amount: number })[];
}

export interface Problem {
  readonly stages: readonly Stage[];
  readonly lags: readonly Lag[];
  readonly holds: readonly Hold[];
  readonly resources: readonly Resource[];
  /** Sorted, disjoint intervals by calendar name. */
  readonly calendars: Readonly<Record<string, readonly Interval[]>>;
  /**
   * Stages that together make one thing to hand over, none of the lists empty. A plan is the earlier, the less the
   * ends of their last stages come to, added up. Absent or empty: all stages are one delivery.
   */
  readonly deliveries?: readonly (readonly string[])[];
  /** Observations on draws, by name. */
  readonly draws: Readonly<Record<string, Truncation>>;
  /**
   * What draws have in common, by name; squares of the shares of one come to at most 1. A draw that is not named has nothing in
   * common with others. Of draws that were observed, where they lie within their bounds varies together in the same way.
   */
  readonly shares?: Readonly<Record<string, readonly Share[]>>;
  /**
   * The streams of random numbers by which draws, and what they share, are sampled, by name; what is not named here has one by
   * its own name. So that what comes of a plan need not hang on what things are called.
   */
  readonly streams?: Readonly<Record<string, string>>;
  /** Nothing that is not fixed starts before this minute. */
  readonly from: number;
  /** Everything must have started by this minute: the horizon. */
  readonly until: number;
}

/**
 * How sure one wants to be that the soap is ready and not too late: lower bounds are taken at this
 * quantile and upper bounds at its complement. 0.5 is "likely", 0.9 is "cautious". From 0.5 up to below 1.
 */
export type Certainty = number;

/** A requirement that takes part in a conflict; enough to say it in words. */
export type Requirement =
  | { readonly kind: 'lag-at-least' | 'lag-at-most'; readonly lag: string }
  | { readonly kind: 'calendar' | 'earliest' | 'latest' | 'fixed'; readonly stage: string }
  | { readonly kind: 'resource'; readonly resource: string; readonly stages: readonly string[] }
  | { readonly kind: 'horizon' };

/** What decides a bound: the constraint through which it was last moved. */
export type Binding = Requirement | { readonly kind: 'origin' };

export interface Window {
  readonly earliest: number;
  readonly latest: number;
  /** Minutes between the two. */
  readonly slack: number;
  readonly earliestBy: Binding;
  readonly latestBy: Binding;
}

export type WindowsOutcome =
  | { readonly status: 'windows'; readonly windows: ReadonlyMap<string, Window> }
  | { readonly status: 'conflict'; readonly requirements: readonly Requirement[] };

/** `before` must have ended (or, for holds, released) when `after` starts; settles a resource conflict. */
export interface Precedence {
  readonly before: string;
  readonly after: string;
  readonly resource: string;
}

export interface Schedule {
  readonly starts: ReadonlyMap<string, number>;
  /** Links that keep the order resource-feasible when times shift. */
  readonly precedences: readonly Precedence[];
  /** The certainty at which lags were honoured. */
  readonly certainty: Certainty;
}

export type ScheduleOutcome =
  | { readonly status: 'planned'; readonly schedule: Schedule }
  | { readonly status: 'conflict'; readonly requirements: readonly Requirement[] }
  | { readonly status: 'undecided'; readonly reason: 'limit' };

/** What is missed: something that must be, the day that was asked for, or no more than a preference. */
export type Loses = 'requirement' | 'due-date' | 'preference';

/** What a plan comes to over its scenarios; each figure is at least the next. */
export interface Odds {
  /** Share of scenarios in which every requirement was met, whenever that was. */
  readonly atAll: number;
  /** Share of those in which every due date was kept too. */
  readonly onTime: number;
  /** Share of those in which every preference was met besides. */
  readonly asPlanned: number;
  /**
   * The minute by which the last stage of each delivery has started in 9 of 10 scenarios that met every requirement, by stage
   * id: what can be counted on. Of a stage that somebody does never before the plan has it; empty where no scenario met them.
   */
  readonly countOn: ReadonlyMap<string, number>;
  /** Of `onTime`. */
  readonly standardError: number;
  readonly scenarios: number;
  readonly seed: number;
  /**
   * Share of all scenarios lost at each stage that lost any, most first, with what was lost there and the requirement that
   * was missed. A scenario is told once, by the worst that befell it; so these and `asPlanned` come to 1.
   */
  readonly losses: readonly {
    readonly stage: string;
    readonly share: number;
    readonly loses: Loses;
    readonly missed: Requirement;
  }[];
}
