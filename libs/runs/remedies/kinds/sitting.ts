import { instantOf, localDateOf, localTimeOf, weekDays, type OpenInterval } from '#hours';
import type { Span } from '#contract';
import { isoInstant, minute, minuteOfIso, type Minute } from '#units';
import { latestAttempt, handsOnMinutes } from '../../log/run-progress.js';
import type { Candidate, Situation } from '../candidate.js';
import { closedStretches } from '../closed-stretches.js';
import type { Trouble } from '../trouble.js';

/** A sitting that is asked for is at least this long, in minutes, and a multiple of half of it. */
const SHORTEST = 60;
/** Around the window of a stage in trouble, minutes. */
const AROUND = 12 * 60;
/** Where there is no window to look at: from the start on, minutes. */
const WITHOUT_PLAN = 8 * 1440;
/** More would be planned for little: the nearest to the windows are. */
const MOST = 6;

/**
 * One more or one longer sitting: an exception to the weekly hours, outside the quiet ones, where the windows in trouble
 * lie. It is put at the beginning, at the end or in the middle of a stretch in which the maker is not at the bench.
 */
export function addSitting(situation: Situation): Candidate[] {
  const spans = situation.troubles
    .filter(({ cure }) => !cure)
    .flatMap((trouble) => around(trouble, situation));
  const found = new Map<string, { readonly span: OpenInterval; readonly off: number }>();
  if (spans.length === 0) return [];
  const first = minute(Math.min(...spans.map(({ from }) => from)));
  const last = minute(Math.max(...spans.map(({ until }) => until)));
  const closed = closedStretches(situation.open, situation.input.workshop, first, last);
  for (const { from, until, middle, length } of spans) {
    for (const stretch of closed.filter((each) => each.from < until && each.to > from)) {
      for (const span of within(stretch, length)) {
        const off = Math.abs(span.from - middle);
        const key = `${String(span.from)}/${String(span.to)}`;
        if ((found.get(key)?.off ?? Infinity) > off) found.set(key, { span, off });
      }
    }
  }
  return [...found.values()]
    .sort((a, b) => a.off - b.off || a.span.from - b.span.from)
    .slice(0, MOST)
    .flatMap(({ span }) => candidate(span, situation));
}

interface Around {
  readonly from: Minute;
  readonly until: Minute;
  /** Where a sitting would help most. */
  readonly middle: number;
  readonly length: number;
}

function around({ run, stages }: Trouble, { plan, options, zone }: Situation): Around[] {
  const shown = plan.document.runs.find((each) => each.run === run);
  const assessed = plan.assessedRuns.find((each) => each.run.order.key === run);
  return stages.flatMap((key): Around[] => {
    const attempt = assessed && latestAttempt(assessed.progress, key);
    if (assessed === undefined || attempt === undefined || attempt.status !== 'open') return [];
    const needed = handsOnMinutes(attempt.stage, attempt.count);
    const length = Math.max(SHORTEST, Math.ceil(needed / (SHORTEST / 2)) * (SHORTEST / 2));
    const stage = shown?.stages.findLast((each) => each.key === key && each.status === 'planned');
    if (stage === undefined) {
      const start = Math.max(options.now, instantOf(assessed.run.order.startAfter, zone) ?? 0);
      return [{ from: minute(start), until: minute(start + WITHOUT_PLAN), middle: start, length }];
    }
    const [opens, best] = [minuteOfIso(stage.opensAt), minuteOfIso(stage.bestAt)];
    const last = stage.lastCallAt === null ? best : minuteOfIso(stage.lastCallAt);
    const from = Math.max(options.now, opens - AROUND);
    return [
      { from: minute(from), until: minute(Math.min(last, best + AROUND) + AROUND), middle: best, length },
    ];
  });
}

function within({ from, to }: OpenInterval, length: number): OpenInterval[] {
  if (to - from < SHORTEST / 2) return [];
  if (to - from <= length) return [{ from, to }];
  const at = (start: number): OpenInterval => ({ from: minute(start), to: minute(start + length) });
  const middle = Math.round((from + to - length) / 60) * 30;
  return [at(from), at(to - length), ...(to - from >= 3 * length ? [at(middle)] : [])];
}

function candidate({ from, to }: OpenInterval, situation: Situation): Candidate[] {
  const { zone, open, input } = situation;
  const date = localDateOf(from, zone);
  const ends = localTimeOf(to, zone);
  const added: Span = { from: localTimeOf(from, zone), to: ends === '00:00' ? '24:00' : ends };
  // An hour that comes twice in autumn, or never in spring, cannot be told by its time of day.
  if (instantOf(`${date}T${added.from}`, zone) !== from || added.from >= added.to) return [];
  const spans = [...spansOn(date, input.workshop.hours), added].sort((a, b) => a.from.localeCompare(b.from));
  const touches = open.some((each) => each.to === from || each.from === to);
  const when = { from: isoInstant(from), to: isoInstant(to) };
  return [
    {
      change: { kind: 'hours', added, date, spans },
      about: 'hours',
      title: { code: touches ? 'remedy.longer-sitting' : 'remedy.add-sitting', ...when },
      asks: [
        { what: { code: 'disturbance.outside-hours', minutes: to - from }, points: 0.5 + (to - from) / 60 },
      ],
      worse: [{ code: 'remedy.outside-hours', ...when }],
      also: [],
      cautions: [],
    },
  ];
}

function spansOn(
  date: string,
  { weekly, exceptions }: Situation['input']['workshop']['hours'],
): readonly Span[] {
  const special = exceptions.find((day) => day.date === date);
  if (special !== undefined) return special.spans;
  // ISO weekdays count from Monday; 1970-01-01 was a Thursday.
  const day = (Math.floor(Date.parse(`${date}T00:00Z`) / 86_400_000) + 3) % 7;
  return weekly[weekDays[day] ?? 'monday'];
}
