import { lengthAt, type Lag, type Length, type Precedence, type Problem } from '#planner';

/**
 * Whether the order can be carried through against all that the soap may do, by trying everything in whole minutes:
 * each minute the soap first lets states come that may, then any stages are started. A state that opens comes at any
 * minute of its band and shows when it does; one that closes shows too late, so it comes at the first. Written from the
 * doc comments of the problem; shares no code with the check but the rounding of bands. For problems without hours,
 * holds, busy intervals or fixed stages, whose uncertain lengths have draws of their own and last a minute or more.
 */
export function winsAgainstSoap(p: Problem, order: readonly Precedence[], certainty: number): boolean {
  const position = new Map(p.stages.map(({ id }, i) => [id, i]));
  const at = (id: string): number => position.get(id)!;
  const band = (length: Length): { low: number; high: number } => ({
    low: lengthAt(length, certainty, 'at-most', p.draws),
    high: lengthAt(length, certainty, 'at-least', p.draws),
  });
  const offset = (lag: Lag): number => (lag.point === 'end' ? p.stages[at(lag.from)]!.duration : 0);
  const openings = p.lags.filter(({ atLeast }) => atLeast?.kind === 'uncertain');
  const known = new Map<string, boolean>();

  const isBroken = (starts: Times, came: Times, now: number): boolean => {
    // What has not been started will start now at the earliest.
    const from = (id: string): number => starts[at(id)] ?? now;
    const missesLag = p.lags.some((lag) => {
      const start = starts[at(lag.to)]!;
      const since = from(lag.from) + offset(lag);
      const last = lag.until === 'end' ? p.stages[at(lag.to)]!.duration : 0;
      const tooLate =
        lag.atMost !== undefined &&
        starts[at(lag.from)] !== null &&
        (start ?? now) + last > since + band(lag.atMost).low;
      if (tooLate || start === null) return tooLate;
      if (lag.atLeast?.kind === 'known') return start < since + Math.ceil(lag.atLeast.minutes);
      const shown = came[openings.indexOf(lag)]!;
      return lag.atLeast !== undefined && (shown === null || shown > start);
    });
    const missesOrder = order.some(({ before, after }) => {
      const start = starts[at(after)]!;
      return start !== null && start < from(before) + p.stages[at(before)]!.duration;
    });
    const missesPlace = p.stages.some(({ earliest = 0, latest = Infinity }, i) => {
      const start = starts[i]!;
      return (
        (start ?? now) > Math.min(latest, p.until) || (start !== null && start < Math.max(earliest, p.from))
      );
    });
    return missesLag || missesOrder || missesPlace;
  };

  const maker = (starts: Times, came: Times, now: number): boolean => {
    if (isBroken(starts, came, now)) return false;
    if (!starts.includes(null)) return true;
    const key = `${starts.join()} ${came.join()} ${now}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const wins =
      starts.some((start, i) => start === null && maker(starts.with(i, now), came, now)) ||
      soap(starts, came, now + 1, 0);
    known.set(key, wins);
    return wins;
  };

  /** Whether the maker wins whichever of the openings from `next` on come now. */
  const soap = (starts: Times, came: Times, now: number, next: number): boolean => {
    const lag = openings[next];
    if (lag === undefined) return maker(starts, came, now);
    const start = starts[at(lag.from)]!;
    const { low, high } = band(lag.atLeast!);
    const passed = start === null ? -1 : now - start - offset(lag);
    if (came[next] !== null || passed < low) return soap(starts, came, now, next + 1);
    if (!soap(starts, came.with(next, now), now, next + 1)) return false;
    return passed === high || soap(starts, came, now, next + 1);
  };

  return maker(
    p.stages.map(() => null),
    openings.map(() => null),
    p.from,
  );
}

type Times = readonly (number | null)[];
