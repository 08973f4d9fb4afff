import type { ConflictResolution, ConflictTiming } from '#contract';
import {
  timingConflictOf,
  relaxations as relaxationsOf,
  type TimingConflict,
  type Requirement,
} from '#planner';
import { isoInstant, minute } from '#units';
import { plannerStage } from './describe-conflict.js';
import type { Network } from './network-references.js';
import { describeRelaxation } from './describe-relaxation.js';
import { resourceNamed, stageNamed } from './network-references.js';

/** Conflicts are told at likely values, at which the last plan was tried. */
const LIKELY = 0.5;

/** The instants at which a conflict shows, and what alone would resolve it, as far as it is found before `stop` says true. */
export function describeResolution(
  requirements: readonly Requirement[],
  of: Network & {
    readonly zone: string;
    readonly seed: number;
    readonly stop?: (() => boolean) | undefined;
  },
): ConflictResolution {
  const { problem, seed, stop } = of;
  const timing = timingConflictOf(problem, requirements, LIKELY);
  const relaxations = relaxationsOf(problem, requirements, { certainty: LIKELY, seed, stop }).flatMap(
    (each) => describeRelaxation(each, { ...of, timing }) ?? [],
  );
  return { timing: timing === undefined ? null : describeTiming(timing, of), relaxations };
}

function describeTiming(timing: TimingConflict, { problem, references }: Network): ConflictTiming {
  const instant = (at: number): string => isoInstant(minute(at));
  const maybe = (at: number | undefined): string | null =>
    at === undefined || !Number.isFinite(at) ? null : instant(at);
  const given =
    timing.given === undefined
      ? null
      : { stage: stageNamed(references, timing.given.stage), at: instant(timing.given.start) };
  switch (timing.kind) {
    case 'hours': {
      const { earliest, latest, closed } = timing;
      return {
        ...{ code: 'timing.hours', given, stage: stageNamed(references, timing.stage) },
        minutes: plannerStage(problem, timing.stage).duration,
        ...{ from: instant(earliest), to: maybe(latest) },
        ...{ endsAt: maybe(closed.from), opensAt: maybe(closed.to) },
      };
    }
    case 'too-late': {
      const [stage, earliest] = [stageNamed(references, timing.stage), instant(timing.earliest)];
      return { code: 'timing.too-late', given, stage, earliest, due: instant(timing.due) };
    }
    case 'too-early': {
      const [stage, latest] = [stageNamed(references, timing.stage), instant(timing.latest)];
      return { code: 'timing.too-early', stage, latest, opens: instant(timing.opens) };
    }
    case 'shared':
      return {
        code: 'timing.shared',
        resource: resourceNamed(references, timing.resource),
        stages: timing.stages.map(({ stage, earliest, latest }) => ({
          stage: stageNamed(references, stage),
          minutes: plannerStage(problem, stage).duration,
          from: instant(earliest),
          to: maybe(latest),
        })),
      };
  }
}
