import type { Interval, Lag, Length, Problem, Stage, Use } from './problem.js';

/** A mistake in how a problem was made. It is told to whoever wrote the caller, and never to the maker. */
export interface ProblemFault {
  /** `planner.` and what is wrong. */
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
  readonly value?: unknown;
  readonly accepted?: string;
}

/**
 * What is wrong with a problem before anything is planned: references that lead nowhere, ids used twice, times that
 * are not whole, lengths and amounts out of range, intervals unsorted, a use above its resource's capacity.
 * @returns faults with code `planner.*`; empty when the other functions of this library may be called
 */
export function checkProblem(p: Problem): ProblemFault[] {
  const known = {
    stages: new Set(p.stages.map((stage) => stage.id)),
    capacities: new Map(p.resources.map((resource) => [resource.id, resource.capacity])),
    calendars: new Set(Object.keys(p.calendars)),
  };
  return [
    ...(['stages', 'lags', 'holds', 'resources'] as const).flatMap((list) => repeatedIds(list, p[list])),
    ...whole(['from'], p.from),
    ...whole(['until'], p.until, p.from),
    ...p.stages.flatMap((stage, i) => checkStage(['stages', i], stage, known)),
    ...p.lags.flatMap((lag, i) => checkLag(['lags', i], lag, known)),
    ...p.holds.flatMap((hold, i) => [
      ...reference(['holds', i, 'from'], 'stage', hold.from, known.stages),
      ...reference(['holds', i, 'to'], 'stage', hold.to, known.stages),
      ...checkUse(['holds', i], hold, known),
    ]),
    ...(p.deliveries ?? []).flatMap((stages, i) => [
      ...(stages.length > 0
        ? []
        : [issue('empty-delivery', ['deliveries', i], 'The delivery has no stage.')]),
      ...stages.flatMap((id, k) => reference(['deliveries', i, k], 'stage', id, known.stages)),
    ]),
    ...p.resources.flatMap((resource, i) => [
      ...whole(['resources', i, 'capacity'], resource.capacity, 0),
      ...resource.busy.flatMap((busy, k) => [
        ...checkInterval(['resources', i, 'busy', k], busy),
        ...whole(['resources', i, 'busy', k, 'amount'], busy.amount, 0),
      ]),
    ]),
    ...Object.entries(p.calendars).flatMap(([name, calendar]) => checkCalendar(name, calendar)),
    ...Object.entries(p.draws).flatMap(([name, { above = -Infinity, below = Infinity }]) =>
      above < below
        ? []
        : [
            issue(
              'empty-range',
              ['draws', name],
              `Draw "${name}" lies between ${above} and ${below}: the first must be less.`,
            ),
          ],
    ),
  ];
}

type Path = readonly (string | number)[];

interface Known {
  readonly stages: ReadonlySet<string>;
  readonly capacities: ReadonlyMap<string, number>;
  readonly calendars: ReadonlySet<string>;
}

function checkStage(path: Path, stage: Stage, known: Known): ProblemFault[] {
  return [
    ...whole([...path, 'duration'], stage.duration, 0),
    ...stage.uses.flatMap((use, k) => checkUse([...path, 'uses', k], use, known)),
    ...(stage.calendar === undefined
      ? []
      : reference([...path, 'calendar'], 'calendar', stage.calendar, known.calendars)),
    ...(['earliest', 'latest', 'fixed', 'previous'] as const).flatMap((field) => {
      const value = stage[field];
      return value === undefined ? [] : whole([...path, field], value);
    }),
  ];
}

function checkLag(path: Path, lag: Lag, known: Known): ProblemFault[] {
  return [
    ...reference([...path, 'from'], 'stage', lag.from, known.stages),
    ...reference([...path, 'to'], 'stage', lag.to, known.stages),
    ...(['atLeast', 'atMost'] as const).flatMap((side) => {
      const length = lag[side];
      return length === undefined ? [] : checkLength([...path, side], length);
    }),
  ];
}

function checkLength(path: Path, length: Length): ProblemFault[] {
  if (length.kind === 'known') return whole([...path, 'minutes'], length.minutes);
  return (['median', 'sigma'] as const).flatMap((field) => {
    const value = length[field];
    if (Number.isFinite(value) && value > 0) return [];
    return [
      issue(
        'not-positive',
        [...path, field],
        `The ${field} is ${value}; it must be above 0.`,
        value,
        'above 0',
      ),
    ];
  });
}

function checkUse(path: Path, { resource, amount }: Use, { capacities }: Known): ProblemFault[] {
  const issues = [
    ...reference([...path, 'resource'], 'resource', resource, new Set(capacities.keys())),
    ...whole([...path, 'amount'], amount, 0),
  ];
  const capacity = capacities.get(resource);
  if (issues.length > 0 || capacity === undefined || amount <= capacity) return issues;
  const message = `${amount} of "${resource}" are asked for and there are ${capacity}.`;
  return [issue('above-capacity', [...path, 'amount'], message, amount, `0 to ${capacity}`)];
}

function checkCalendar(name: string, calendar: readonly Interval[]): ProblemFault[] {
  return calendar.flatMap((open, k) => {
    const path = ['calendars', name, k];
    const before = calendar[k - 1];
    if (before === undefined || before.to <= open.from) return checkInterval(path, open);
    const message = `The interval begins at ${open.from}, before the one ahead of it ends at ${before.to}.`;
    return [
      ...checkInterval(path, open),
      issue('unsorted', path, message, open, 'sorted, disjoint intervals'),
    ];
  });
}

function checkInterval(path: Path, { from, to }: Interval): ProblemFault[] {
  const issues = [...whole([...path, 'from'], from), ...whole([...path, 'to'], to)];
  if (issues.length > 0 || from < to) return issues;
  const message = `The interval goes from ${from} to ${to}; it must end after it begins.`;
  return [issue('empty-interval', path, message, { from, to }, 'from below to')];
}

function repeatedIds(list: string, entries: readonly { readonly id: string }[]): ProblemFault[] {
  const seen = new Set<string>();
  return entries.flatMap(({ id }, i) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [
      issue(
        'repeated-id',
        [list, i, 'id'],
        `The id "${id}" is used twice in ${list}.`,
        id,
        'an id of its own',
      ),
    ];
  });
}

function reference(path: Path, what: string, id: string, known: ReadonlySet<string>): ProblemFault[] {
  if (known.has(id)) return [];
  return [issue(`unknown-${what}`, path, `There is no ${what} "${id}".`, id, [...known].join(', '))];
}

function whole(path: Path, value: number, least = -Infinity): ProblemFault[] {
  if (Number.isSafeInteger(value) && value >= least) return [];
  const accepted = least === -Infinity ? 'a whole number' : `a whole number, ${least} or more`;
  return [
    issue('not-whole', path, `${String(path.at(-1))} is ${value}; accepted: ${accepted}.`, value, accepted),
  ];
}

function issue(code: string, path: Path, message: string, value?: unknown, accepted?: string): ProblemFault {
  return {
    code: `planner.${code}`,
    path,
    message,
    ...(value !== undefined && { value }),
    ...(accepted !== undefined && { accepted }),
  };
}
