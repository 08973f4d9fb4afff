import { lengthAt, type Problem, type Schedule } from '#planner';

/**
 * What is wrong with a schedule, in words; empty when nothing is. Written from the definitions in the problem's doc
 * comments, minute by minute, and shares no code with the search but the rounding of lengths.
 */
export function scheduleFaults(p: Problem, schedule: Pick<Schedule, 'starts' | 'certainty'>): string[] {
  const { certainty } = schedule;
  const faults: string[] = [];
  const fault = (bad: boolean, text: string): void => {
    if (bad) faults.push(text);
  };
  const stageOf = new Map(p.stages.map((stage) => [stage.id, stage]));
  const start = (id: string): number => schedule.starts.get(id) ?? NaN;
  const end = (id: string): number => start(id) + (stageOf.get(id)?.duration ?? NaN);
  const isFixed = (id: string): boolean => stageOf.get(id)?.fixed !== undefined;

  for (const stage of p.stages) {
    const at = start(stage.id);
    fault(!Number.isInteger(at), `${stage.id} has no whole start`);
    if (stage.fixed !== undefined) {
      fault(at !== stage.fixed, `${stage.id} moved from ${stage.fixed} to ${at}`);
      continue;
    }
    fault(at < p.from || at > p.until, `${stage.id} at ${at} is outside ${p.from} to ${p.until}`);
    fault(stage.earliest !== undefined && at < stage.earliest, `${stage.id} is too early`);
    fault(stage.latest !== undefined && at > stage.latest, `${stage.id} is too late`);
    if (stage.calendar !== undefined) {
      const fits = p.calendars[stage.calendar]?.some(
        (open) => open.from <= at && at + stage.duration <= open.to,
      );
      fault(fits !== true, `${stage.id} at ${at} is out of hours`);
    }
  }
  for (const lag of p.lags) {
    if (isFixed(lag.from) && isFixed(lag.to)) continue;
    const since = start(lag.to) - (lag.point === 'end' ? end(lag.from) : start(lag.from));
    const least = lag.atLeast && lengthAt(lag.atLeast, certainty, 'at-least', p.draws);
    const most = lag.atMost && lengthAt(lag.atMost, certainty, 'at-most', p.draws);
    fault(least !== undefined && since < least, `${lag.id}: ${since} is less than ${least}`);
    const inTime = lag.until === 'end' ? since + end(lag.to) - start(lag.to) : since;
    fault(most !== undefined && inTime > most, `${lag.id}: ${inTime} is more than ${most}`);
  }
  return [...faults, ...overloads(p, start, end, isFixed)];
}

function overloads(
  p: Problem,
  start: (id: string) => number,
  end: (id: string) => number,
  isFixed: (id: string) => boolean,
): string[] {
  const faults: string[] = [];
  for (const { id, capacity, busy } of p.resources) {
    const used = new Map<number, { free: number; settled: number }>();
    const occupy = (from: number, to: number, amount: number, settled: boolean): void => {
      for (let t = from; t < to; t++) {
        const at = used.get(t) ?? { free: 0, settled: 0 };
        if (settled) at.settled += amount;
        else at.free += amount;
        used.set(t, at);
      }
    };
    for (const { from, to, amount } of busy) occupy(from, to, amount, true);
    for (const stage of p.stages) {
      for (const use of stage.uses) {
        if (use.resource === id) occupy(start(stage.id), end(stage.id), use.amount, isFixed(stage.id));
      }
    }
    for (const hold of p.holds) {
      const settled = isFixed(hold.from) && isFixed(hold.to);
      if (hold.resource === id) occupy(start(hold.from), end(hold.to), hold.amount, settled);
    }
    // What is settled may overload among itself: it is history.
    for (const [t, { free, settled }] of used) {
      if (free > 0 && free + settled > capacity) faults.push(`${id} overloaded at ${t}`);
    }
  }
  return faults;
}
