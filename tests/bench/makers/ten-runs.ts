import { odds, schedule, windows, type Problem, type Schedule } from '#planner';
import { scheduleFaults } from '../../support/check-schedule.js';
import { atMost, median, watched, type Figure } from '../../support/figure.js';
import { tenRunsProblem } from '../../support/ten-runs-problem.js';
import { timed } from '../../support/timed.js';

const CERTAINTY = 0.6;
const SEED = 1;
const SHORT_S = 5;
const LONG_S = 60;
const SCENARIOS = 2000;
/** How often what takes milliseconds is repeated. */
const ROUNDS = 21;

/** Ten runs in one workshop (invented): the first plan, what more time makes of it, a log entry and a mishap. */
export function tenRuns(): Figure[] {
  const p = tenRunsProblem();
  const of = `ten runs, ${p.stages.length} stages`;
  schedule(p, { certainty: CERTAINTY, seed: SEED + 1 });
  const first = timed(() => planned(p, {}));
  const short = planned(p, stopAfter(SHORT_S));
  const long = planned(p, stopAfter(LONG_S));
  const chance = timed(() => odds(p, short, { seed: SEED, scenarios: SCENARIOS }));
  const rejected = [first.value, short, long].filter((each) => scheduleFaults(p, each).length > 0);
  return [
    atMost(`first plan, ${of}`, first.ms / 1000, 's', 1),
    atMost(`plan after ${SHORT_S} s over that after ${LONG_S} s, ${of}`, over(p, short, long), '%', 1),
    watched(`first plan over that after ${LONG_S} s, ${of}`, over(p, first.value, long), '%', 'lower'),
    watched(`last hands-on stage, ${of}`, handsOnDays(p, short), 'days', 'lower'),
    watched(`odds over ${SCENARIOS} scenarios, ${of}`, chance.ms, 'ms', 'lower'),
    atMost(`schedules that the checker rejects, ${of}`, rejected.length, '', 0),
    ...afterwards(p, short, of),
  ];
}

/** Thirty of them over four months: how soon there is a plan, and how near it comes to what more time finds. */
export function thirtyRuns(): Figure[] {
  const p = tenRunsProblem(30);
  const of = `thirty runs, ${p.stages.length} stages`;
  const first = timed(() => planned(p, { limit: Infinity, stop: () => true }));
  const whole = timed(() => planned(p, {}));
  const [short, long] = [planned(p, stopAfter(SHORT_S)), planned(p, stopAfter(4 * SHORT_S))];
  const rejected = [first.value, whole.value, short, long].filter(
    (each) => scheduleFaults(p, each).length > 0,
  );
  return [
    atMost(`first plan, ${of}`, first.ms / 1000, 's', 2),
    watched(`plan with the effort of every day, ${of}`, whole.ms / 1000, 's', 'lower'),
    watched(`first plan over that after ${4 * SHORT_S} s, ${of}`, over(p, first.value, long), '%', 'lower'),
    atMost(`plan after ${SHORT_S} s over that after ${4 * SHORT_S} s, ${of}`, over(p, short, long), '%', 5),
    watched(`last hands-on stage, ${of}`, handsOnDays(p, short), 'days', 'lower'),
    atMost(`schedules that the checker rejects, ${of}`, rejected.length, '', 0),
  ];
}

/** A third of the work is done and one more entry comes, on time. And, each by itself, any batch goes wrong. */
function afterwards(p: Problem, before: Schedule, of: string): Figure[] {
  const inOrder = p.stages
    .filter(({ calendar }) => calendar !== undefined)
    .sort((a, b) => before.starts.get(a.id)! - before.starts.get(b.id)!);
  const done = Math.floor(inOrder.length / 3);
  const logged = withLog(p, before, new Set(inOrder.slice(0, done + 1).map(({ id }) => id)));
  const told = Array.from({ length: ROUNDS }, () =>
    timed(() => windows(logged, CERTAINTY, before.precedences)),
  );
  if (told.some(({ value }) => value.status !== 'windows')) throw new Error('the log leaves no windows');
  const kept = Array.from({ length: ROUNDS }, () => timed(() => planned(logged, {})));
  const batches = inOrder.filter(({ id }) => /[/](lye|dough|piping-batch)$/.test(id));
  const mishaps = batches.map((stage) => {
    const broken = withMishap(p, before, stage.id);
    const replanned = timed(() => planned(broken, {}));
    return {
      ...replanned,
      faults: scheduleFaults(broken, replanned.value),
      moved: moved(broken, replanned.value),
    };
  });
  return [
    atMost(`windows after a log entry, median, ${of}`, median(told.map(({ ms }) => ms)), 'ms', 5),
    watched(`plan kept after a log entry, median, ${of}`, median(kept.map(({ ms }) => ms)), 'ms', 'lower'),
    atMost(`stages moved by an entry on time, ${of}`, moved(logged, kept[0]!.value), '', 0),
    atMost(
      `replan after a mishap, longest of ${mishaps.length}, ${of}`,
      Math.max(...mishaps.map(({ ms }) => ms)),
      'ms',
      300,
    ),
    watched(`stages moved by a mishap, median, ${of}`, median(mishaps.map((m) => m.moved)), '', 'lower'),
    atMost(
      `replans that the checker rejects, ${of}`,
      mishaps.filter((m) => m.faults.length > 0).length,
      '',
      0,
    ),
  ];
}

function stopAfter(seconds: number): { readonly limit: number; readonly stop: () => boolean } {
  const begun = performance.now();
  return { limit: Infinity, stop: () => performance.now() - begun >= 1000 * seconds };
}

function planned(p: Problem, limits: { readonly limit?: number; readonly stop?: () => boolean }): Schedule {
  const outcome = schedule(p, { certainty: CERTAINTY, seed: SEED, ...limits });
  if (outcome.status !== 'planned') throw new Error(`the ten runs are ${outcome.status}`);
  return outcome.schedule;
}

/** Days from the first minute to the deliveries, added up: by how much the one is larger, as a share of the other. */
function over(p: Problem, schedule: Schedule, than: Schedule): number {
  return 100 * (total(p, schedule) / total(p, than) - 1);
}

/** Minutes from the start of a run's first stage to the end of its last one before the cure, added up over the runs. */
function total(p: Problem, { starts }: Schedule): number {
  return p.deliveries!.reduce((sum, ids) => {
    const stages = p.stages.filter((stage) => ids.includes(stage.id));
    return (
      sum + Math.max(...stages.map(({ id, duration, earliest }) => starts.get(id)! + duration - earliest!))
    );
  }, 0);
}

function handsOnDays(p: Problem, { starts }: Schedule): number {
  const ends = p.stages.flatMap((s) => (s.calendar === undefined ? [] : [starts.get(s.id)! + s.duration]));
  return (Math.max(...ends) - p.from) / 1440;
}

/** The stages named are done when they were planned; all others were planned before. */
function withLog(p: Problem, { starts }: Schedule, done: ReadonlySet<string>): Problem {
  const stages = p.stages.map((stage) => {
    const at = starts.get(stage.id)!;
    if (done.has(stage.id)) return { ...stage, fixed: at };
    return stage.calendar === undefined ? stage : { ...stage, previous: at };
  });
  const now = Math.max(
    ...stages.flatMap(({ fixed, duration }) => (fixed === undefined ? [] : [fixed + duration])),
  );
  return {
    ...p,
    stages: stages.map((s) =>
      s.fixed === undefined ? { ...s, earliest: Math.max(now, s.earliest ?? now) } : s,
    ),
  };
}

/** All that was planned before the batch is done; the batch itself went wrong and has to be made again. */
function withMishap(p: Problem, before: Schedule, id: string): Problem {
  const at = before.starts.get(id)!;
  const ids = p.stages.flatMap((s) =>
    before.starts.get(s.id)! < at && s.calendar !== undefined ? [s.id] : [],
  );
  const logged = withLog(p, before, new Set(ids));
  const stage = logged.stages.find((each) => each.id === id)!;
  const again = { ...stage, earliest: at + stage.duration };
  return { ...logged, stages: logged.stages.map((each) => (each.id === id ? again : each)) };
}

function moved(p: Problem, { starts }: Schedule): number {
  return p.stages.filter(({ id, fixed, previous }) => {
    return fixed === undefined && previous !== undefined && starts.get(id) !== previous;
  }).length;
}
