import type { StateId } from '#clocks';
import type { Link, Wait } from '#contract';
import type { Lag, Length } from '#planner';
import { normalQuantile } from '#units';
import type { StageAttempt } from '../log/run-progress.js';
import {
  cureStarts,
  drawOf,
  liveAttempts,
  lookedDrawOf,
  readyId,
  stageId,
  type AssessedRun,
  makingAttempt,
} from '../assessed-run.js';
import type { LagReason, NetworkLag } from './network-references.js';
import { clockStarter } from '../log/sightings.js';
import { countsFrom } from '../input/counts-from.js';
import { latenessOf, type Lateness } from '../input/lateness.js';
import { isBeforeMaking } from '../input/stage-order.js';
import { scalesDrawOf } from './streams-of.js';

/** A lag, and why it is there. */
export interface ReasonedLag {
  readonly lag: Lag;
  readonly reference: NetworkLag;
}

/** One thing after another, however long after. */
const afterAll = { atLeastMin: 0, atMostMin: undefined } as const;

/** The lags of a run: its links, its waits by the clocks of their parts, and the cure. */
export function lagsOf(assessed: AssessedRun): ReasonedLag[] {
  const key = assessed.run.order.key;
  const live = new Map(liveAttempts(assessed).map((a) => [a.stage.key, a]));
  const idOf = (attempt: StageAttempt): string => stageId(key, attempt.stage.key, attempt.attempt);
  const lags: ReasonedLag[] = [];
  const add = (lag: Omit<Lag, 'point'>, reason: LagReason): void => {
    const { from, to } = lag;
    lags.push({ lag: { ...lag, point: 'end' }, reference: { assessed, from, to, reason } });
  };
  const { design } = assessed.run;
  for (const { id, from, to, atLeastMin, atMostMin, late } of bridgedLinks(assessed, live)) {
    const atLeast = { kind: 'known', minutes: atLeastMin } as const;
    const atMost = atMostMin === undefined ? {} : { atMost: { kind: 'known', minutes: atMostMin } as const };
    const loses = latenessOf(design, { to: to.stage.key, late });
    const lag = {
      id,
      from: idOf(from),
      to: idOf(to),
      atLeast,
      ...atMost,
      ...(atMostMin !== undefined && preference(loses)),
    };
    add(lag, { kind: 'link', atLeastMin, atMostMin });
  }
  assessed.run.design.waits.flatMap(bySideStart).forEach((wait, i) => {
    const from = clockStarter(assessed, wait.part, wait.opens ?? wait.closes);
    const to = live.get(wait.stage);
    if (from === undefined || to === undefined || isPast(from, to)) return;
    const times = {
      ...lengthsOf(assessed, wait),
      ...(wait.closes !== undefined && preference(latenessOf(design, wait))),
    };
    add(
      { id: `${key}/waits/${String(i)}`, from: idOf(from), to: idOf(to), ...times },
      { kind: 'wait', wait },
    );
    const earliest = earliestOf(assessed, wait);
    if (earliest === undefined) return;
    const atLeast = { kind: 'known', minutes: earliest } as const;
    const id = `${key}/waits/${String(i)}/earliest`;
    add({ id, from: idOf(from), to: idOf(to), atLeast }, { kind: 'wait', wait });
  });
  // Nobody unmoulds, patches or turns what is not made yet, whether the design says so or not.
  for (const attempt of live.values()) {
    const making = makingAttempt(assessed, attempt.stage.part);
    if (making === undefined || making === attempt || isPast(making, attempt)) continue;
    if (isBeforeMaking(assessed.run.design, attempt.stage)) continue;
    const id = `${key}/made/${attempt.stage.key}`;
    const atLeast = { kind: 'known', minutes: 0 } as const;
    add({ id, from: idOf(making), to: idOf(attempt), atLeast }, { kind: 'made', part: attempt.stage.part });
  }
  // No lot is ready before it is tested, if its design has a test.
  for (const attempt of cureStarts(assessed).length === 0 ? [] : live.values()) {
    if (attempt.stage.kind !== 'zap-test') continue;
    const id = `${key}/tested/${attempt.stage.key}`;
    const atLeast = { kind: 'known', minutes: 0 } as const;
    add({ id, from: idOf(attempt), to: readyId(key), atLeast }, { kind: 'link', ...afterAll });
  }
  for (const { part, attempt } of cureStarts(assessed)) {
    const atLeast = weighedLength(assessed, attempt) ?? uncertain(assessed, part, 'cured');
    add(
      { id: `${key}/cure/${part}`, from: idOf(attempt), to: readyId(key), atLeast },
      { kind: 'cure', part },
    );
  }
  return lags;
}

/** What closes on looks alone is a preference of the planner's. */
function preference({ loses }: Lateness): Pick<Lag, 'isPreference'> {
  return loses === 'looks' ? { isPreference: true } : {};
}

/** A stage that is done was done on what was there then, not on what is made again for the pieces of another group. */
function isPast(from: StageAttempt, to: StageAttempt): boolean {
  return to.status === 'done' && from.status !== 'done';
}

/**
 * How long a wait lasts and when it closes. Batter that was mixed is poured when it is ready, a minute sooner or later, as
 * whoever stands over it sees: the plan goes by its likely times, and the odds that all pieces are done before it is too
 * stiff are those of the bowl (`withPaceOdds`). Everything else comes to the maker's hours as uncertain as it is.
 */
function lengthsOf(
  assessed: AssessedRun,
  { part, opens, closes }: Wait,
): Pick<Lag, 'atLeast' | 'atMost' | 'until'> {
  const none: Length = { kind: 'known', minutes: 0 };
  const length = (each: StateId): Uncertain => uncertain(assessed, part, each);
  const state = opens ?? closes;
  if (state !== undefined && countsFrom(state) === 'mix') {
    const likely = (each: StateId): number => Math.round(length(each).median);
    const from = opens === undefined ? 0 : likely(opens);
    const atLeast: Length = { kind: 'known', minutes: from };
    if (closes === undefined) return { atLeast };
    return { atLeast, atMost: { kind: 'known', minutes: Math.max(from, likely(closes)) } };
  }
  const atLeast = opens === undefined ? none : length(opens);
  // The last piece must be done in time, not only the first.
  return closes === undefined ? { atLeast } : { atLeast, atMost: length(closes), until: 'end' };
}

/**
 * How soon the maker has ever found ready what a stage waits for, where only done stages tell: a plan that asks for it sooner
 * would rest on no look. Not in the bowl, nor where something closes soon after, as whoever is late there loses it.
 */
export function earliestOf(assessed: AssessedRun, { part, stage, opens }: Wait): number | undefined {
  if (opens === undefined || (countsFrom(opens) !== 'making' && countsFrom(opens) !== 'unmoulding'))
    return undefined;
  const { waits, links } = assessed.run.design;
  const closes =
    waits.some((wait) => wait.stage === stage && wait.closes !== undefined) ||
    links.some(({ to, atMostMin }) => to === stage && atMostMin !== undefined);
  const earliest = assessed.clocks.get(part)?.get(opens)?.earliestMin;
  return closes || earliest === undefined ? undefined : Math.floor(earliest);
}

/** A wait whose two sides count from different moments, as firmness does from the pour and drying from the unmoulding, is two. */
function bySideStart(wait: Wait): Wait[] {
  const { opens, closes, late, ...of } = wait;
  if (opens === undefined || closes === undefined || countsFrom(opens) === countsFrom(closes)) return [wait];
  return [
    { ...of, opens },
    { ...of, closes, ...(late && { late }) },
  ];
}

/** The cure as the scales have it, from the end of the stage at which it began. @returns undefined while they do not say */
function weighedLength(assessed: AssessedRun, begun: StageAttempt): Length | undefined {
  const { ready } = assessed.scales;
  if (ready === undefined || begun.endedAt === undefined) return undefined;
  const [low, likely, high] = [ready.low, ready.likely, ready.high].map((at) => at - Number(begun.endedAt));
  if (low === undefined || likely === undefined || high === undefined || low <= 0) return undefined;
  const sigma = Math.log(high / low) / (2 * normalQuantile(0.9));
  if (sigma < 1e-6) return { kind: 'known', minutes: Math.round(likely) };
  return { kind: 'uncertain', median: likely, sigma, draw: scalesDrawOf(assessed.run.order.key) };
}

interface BridgedLink {
  readonly id: string;
  readonly from: StageAttempt;
  readonly to: StageAttempt;
  readonly atLeastMin: number;
  readonly atMostMin?: number;
  readonly late?: Link['late'];
}

/** The links between live stages; where a stage between two was dropped, the order of the two is kept. */
function bridgedLinks(assessed: AssessedRun, live: ReadonlyMap<string, StageAttempt>): BridgedLink[] {
  const { links } = assessed.run.design;
  const id = (i: number): string => `${assessed.run.order.key}/links/${String(i)}`;
  const bridged: BridgedLink[] = [];
  const follow = (from: StageAttempt, via: string, first: number, seen: Set<string>): void => {
    links.forEach((link) => {
      if (link.from !== via || seen.has(link.to)) return;
      const to = live.get(link.to);
      if (to !== undefined && isPast(from, to)) seen.add(link.to);
      else if (to !== undefined) bridged.push({ id: id(first), from, to, atLeastMin: 0 });
      else {
        seen.add(link.to);
        follow(from, link.to, first, seen);
      }
    });
  };
  links.forEach((link, i) => {
    const from = live.get(link.from);
    const to = live.get(link.to);
    if (from === undefined) return;
    if (to === undefined) follow(from, link.to, i, new Set([link.from, link.to]));
    else if (!isPast(from, to)) {
      const { atLeastMin, atMostMin, late } = link;
      bridged.push({
        ...{ id: id(i), from, to, atLeastMin },
        ...(atMostMin !== undefined && { atMostMin }),
        ...(late && { late }),
      });
    }
  });
  return bridged;
}

type Uncertain = Extract<Length, { readonly kind: 'uncertain' }>;

function uncertain(assessed: AssessedRun, part: string, state: StateId): Uncertain {
  const found = assessed.clocks.get(part)?.get(state);
  if (found === undefined) throw new Error(`no clock for ${state} of ${part}`);
  const looked = lookedDrawOf(assessed.run, part, state);
  const draw = looked in assessed.draws ? looked : drawOf(assessed.run, part, state);
  return { kind: 'uncertain', median: found.medianMin, sigma: found.sigma, draw };
}
