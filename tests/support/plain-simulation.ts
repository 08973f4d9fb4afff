import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import {
  lengthAt,
  type Lag,
  type Length,
  type Loses,
  type Problem,
  type Schedule,
  type Stage,
} from '#planner';

/** A plan and what the soap does with it. */
export interface PlainScenario {
  readonly p: Problem;
  readonly s: Schedule;
  /** Standard deviations by which each draw turns out, by its name. */
  readonly deviations: ReadonlyMap<string, number>;
  readonly retestMin: number;
}

interface Lost {
  readonly stage: string;
  readonly lags: readonly string[];
  readonly loses: Loses;
}

interface Edge {
  readonly from: string;
  readonly to: string;
  readonly weight: number;
}

/**
 * One scenario carried out by the rules that `simulator` states, slowly: every test of every stage is made, starts are
 * looked for minute by minute, medians come from @stdlib. For problems without busy intervals, observations and
 * stages of one planned start.
 * @returns the stage at which it is lost, the lags that were not ready or were broken there, if it was that, and whether that
 *   was a requirement; else the first stage that was late, else the first preference that was missed; undefined when all went
 *   as planned
 */
export function carriedOut({ p, s, deviations, retestMin }: PlainScenario): Lost | undefined {
  const planned = new Map(p.stages.map(({ id, fixed }) => [id, fixed ?? s.starts.get(id)!]));
  const starts = new Map(planned);
  const done = new Set<string>();
  const stageOf = (id: string): Stage => p.stages.find((stage) => stage.id === id)!;
  // Between two stages that are fixed a lag is history.
  const lags = p.lags.filter(({ from, to }) => [from, to].some((id) => stageOf(id).fixed === undefined));
  const since = (lag: Lag): number =>
    starts.get(lag.from)! + (lag.point === 'end' ? stageOf(lag.from).duration : 0);
  const lasts = (length: Length): number =>
    length.kind === 'known'
      ? length.minutes
      : length.median * Math.exp(length.sigma * deviations.get(length.draw)!);

  /** Moves what follows later; whatever is done stays. @returns the stage that has no start left */
  const follow = (edges: readonly Edge[], moved: readonly string[]): string | undefined => {
    const queue = [...moved];
    for (let from = queue.shift(); from !== undefined; from = queue.shift()) {
      for (const edge of edges.filter((each) => each.from === from)) {
        const bound = starts.get(from)! + edge.weight;
        if (done.has(edge.to) || isUnattended(edge.to) || bound <= starts.get(edge.to)!) continue;
        const at = allowedFrom(p, stageOf(edge.to), bound);
        if (at === undefined) return edge.to;
        starts.set(edge.to, at);
        if (!queue.includes(edge.to)) queue.push(edge.to);
      }
    }
    return undefined;
  };
  const wishes = ['all', 'required', 'known'].map((which) => edgesOf(p, s, which as Which));
  const followOrLose = (moved: readonly string[]): Lost | undefined => {
    const before = new Map(starts);
    let stuck: string | undefined;
    for (const edges of wishes) {
      for (const [id, at] of before) starts.set(id, at);
      stuck = follow(edges, moved);
      if (stuck === undefined) return undefined;
    }
    return { stage: stuck!, lags: [], loses: 'requirement' };
  };
  // Nobody has to do what takes no time, no hands and no hours and lets nothing wait: it is there once all that it waits for
  // has passed.
  const unattended = p.stages.filter(
    ({ id, isDue, latest, fixed, duration, uses, calendar }) =>
      fixed === undefined &&
      duration + uses.length === 0 &&
      calendar === undefined &&
      (isDue === true || latest === undefined) &&
      !p.lags.some(({ from, to, atMost }) => from === id || (to === id && atMost !== undefined)),
  );
  const isUnattended = (id: string): boolean => unattended.some((each) => each.id === id);
  const dueFirst = (): string | undefined =>
    [...starts.keys()]
      .filter((id) => !done.has(id) && !isUnattended(id))
      .sort((a, b) => starts.get(a)! - starts.get(b)! || planned.get(a)! - planned.get(b)!)[0];
  const waitsFor = (id: string, now: number): Lag | undefined =>
    lags.find(
      (lag) =>
        lag.to === id &&
        done.has(lag.from) &&
        isUncertain(lag.atLeast) &&
        since(lag) + lasts(lag.atLeast) > now,
    );

  let disliked: Lost | undefined;
  for (let next = dueFirst(); next !== undefined; next = dueFirst()) {
    const now = starts.get(next)!;
    const late = waitsFor(next, now);
    if (late !== undefined) {
      const ready = since(late) + lasts(late.atLeast!);
      const other = Math.min(
        ...[...starts].flatMap(([id, at]) => (id === next || done.has(id) || isUnattended(id) ? [] : [at])),
      );
      let at: number | undefined = now;
      do at = allowedFrom(p, stageOf(next), at + retestMin);
      while (at !== undefined && at < ready && at <= other);
      if (at === undefined) return { stage: next, lags: [late.id], loses: 'requirement' };
      starts.set(next, at);
      const lost = followOrLose([next]);
      if (lost) return lost;
      continue;
    }
    const pushed = lags.flatMap((lag) => {
      if (!isUncertain(lag.atLeast) || !done.has(lag.from) || done.has(lag.to)) return [];
      if (isUnattended(lag.to)) return [];
      const passed = now - since(lag);
      if (passed < 0 || since(lag) + lasts(lag.atLeast) <= now) return [];
      const at = allowedFrom(p, stageOf(lag.to), Math.ceil(since(lag) + medianAfter(lag.atLeast, passed)));
      if (at === undefined || at <= starts.get(lag.to)!) return [];
      starts.set(lag.to, at);
      return [lag.to];
    });
    const lost = pushed.length > 0 ? followOrLose(pushed) : undefined;
    if (lost) return lost;
    if (starts.get(next)! > now) {
      const at = allowedFrom(p, stageOf(next), Math.max(starts.get(next)!, now + retestMin));
      if (at === undefined) return { stage: next, lags: [], loses: 'requirement' };
      starts.set(next, at);
      const lostByWaiting = followOrLose([next]);
      if (lostByWaiting) return lostByWaiting;
      continue;
    }
    done.add(next);
    const at = next;
    const broken = lags.filter((lag) => {
      const { from, to, atLeast, atMost } = lag;
      if (![from, to].includes(at) || !done.has(from) || !done.has(to)) return false;
      const passed = starts.get(to)! - since(lag);
      const inTime = passed + (lag.until === 'end' ? stageOf(to).duration : 0);
      return (atLeast && passed < lasts(atLeast)) || (atMost && inTime > lasts(atMost));
    });
    const [wished, required] = [true, false].map((preferred) =>
      broken.filter(({ isPreference }) => (isPreference === true) === preferred).map(({ id }) => id),
    ) as [string[], string[]];
    if (required.length > 0) return { stage: at, lags: required, loses: 'requirement' };
    if (wished.length > 0) disliked ??= { stage: at, lags: wished, loses: 'preference' };
  }
  for (const { id, earliest = p.from } of unattended) {
    const ends = lags.flatMap((lag) =>
      lag.to === id && lag.atLeast !== undefined ? [since(lag) + lasts(lag.atLeast)] : [],
    );
    starts.set(id, Math.ceil(Math.max(earliest, ...ends)));
  }
  const late = p.stages.find(
    ({ id, isDue, fixed, latest = Infinity }) =>
      isDue === true && fixed === undefined && starts.get(id)! > latest,
  );
  return late === undefined ? disliked : { stage: late.id, lags: [], loses: 'due-date' };
}

/** All lags at likely values, those that must hold, and the known ones among these. */
type Which = 'all' | 'required' | 'known';

type Uncertain = Length & { readonly kind: 'uncertain' };

function isUncertain(length: Length | undefined): length is Uncertain {
  return length?.kind === 'uncertain';
}

/** The length half of those exceed that last longer than `passed` minutes. */
function medianAfter({ median, sigma }: Uncertain, passed: number): number {
  const come = passed > 0 ? lognormalCdf(passed, Math.log(median), sigma) : 0;
  return lognormalQuantile((1 + come) / 2, Math.log(median), sigma);
}

/** The first start from `at` on that the stage's hours and bounds allow. */
function allowedFrom(p: Problem, stage: Stage, at: number): number | undefined {
  const { fixed, duration, calendar, earliest = p.from } = stage;
  // A day that is missed is late, not lost.
  const latest = stage.isDue === true ? p.until : (stage.latest ?? p.until);
  if (fixed !== undefined) return at <= fixed ? fixed : undefined;
  for (let start = Math.max(at, p.from, earliest); start <= Math.min(latest, p.until); start++) {
    const hours = calendar === undefined ? undefined : p.calendars[calendar]!;
    if (hours?.some(({ from, to }) => from <= start && start + duration <= to) !== false) return start;
  }
  return undefined;
}

function edgesOf(p: Problem, s: Schedule, which: Which): Edge[] {
  const stageOf = (id: string): Stage => p.stages.find((stage) => stage.id === id)!;
  const areFixed = (a: string, b: string): boolean => [a, b].every((id) => stageOf(id).fixed !== undefined);
  const lags = p.lags.flatMap((lag): Edge[] => {
    const { from, to, atLeast, atMost } = lag;
    if (areFixed(from, to)) return [];
    const offset = lag.point === 'end' ? stageOf(from).duration : 0;
    const last = lag.until === 'end' ? stageOf(to).duration : 0;
    const counts = (length: Length | undefined): length is Length =>
      length !== undefined && !(which === 'known' && isUncertain(length));
    return [
      ...(counts(atLeast) ? [{ from, to, weight: offset + lengthAt(atLeast, 0.5, 'at-least', {}) }] : []),
      ...(counts(atMost) && (which === 'all' || lag.isPreference !== true)
        ? [{ from: to, to: from, weight: last - offset - lengthAt(atMost, 0.5, 'at-most', {}) }]
        : []),
    ];
  });
  const orders = s.precedences
    .filter(({ before, after }) => !areFixed(before, after))
    .map(({ before, after }) => ({ from: before, to: after, weight: stageOf(before).duration }));
  return [...lags, ...orders];
}
