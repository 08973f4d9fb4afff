import { instantOf, localDateOf } from '#hours';
import { minute } from '#units';
import { troubledRuns, troublesOf, type Candidate, type Situation } from '../candidate.js';

const WEEKS = [1, 2, 3, 4, 6, 8];

/** Gives the day up that the cure does not meet surely enough, for one some weeks later. */
export function giveLaterDay(situation: Situation): Candidate[] {
  return troubledRuns(situation).flatMap((assessed) => {
    const { key, title, readyBy } = assessed.run.order;
    const day = readyBy === undefined ? undefined : instantOf(readyBy, situation.zone);
    const late = troublesOf(situation, assessed).some(({ cure, kind }) => cure || kind === 'latest');
    if (readyBy === undefined || day === undefined || !late) return [];
    return WEEKS.map((weeks): Candidate => {
      // Noon, so that an hour more or less in between changes no date.
      const later = localDateOf(minute(day + weeks * 7 * 1440 + 720), situation.zone);
      return {
        change: { kind: 'ready-by', run: key, readyBy: later },
        about: `ready-by/${key}`,
        title: { code: 'remedy.later-day', run: title, before: readyBy, after: later },
        asks: [{ what: { code: 'disturbance.day-given-up' }, points: 4 + weeks }],
        worse: [{ code: 'remedy.nothing-ready', run: title, readyBy }],
        also: [],
        cautions: [],
      };
    });
  });
}
