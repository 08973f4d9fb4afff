import type { ConflictClash } from '#contract';
import { localText } from '#hours';
import { clashOf, relaxations, type Clash, type Problem, type Requirement } from '#planner';
import { minute } from '#units';
import { durationText } from '../clocks/duration-text.js';
import type { RunInHand } from '../run-in-hand.js';
import { titleOfId } from './describe-conflict.js';
import { wayOutText } from './describe-way-out.js';
import { rangeText } from './range-text.js';

/** Conflicts are told at likely values, at which the last plan was tried. */
const LIKELY = 0.5;

/** The instants at which a conflict shows, and what alone would resolve it, in the maker's words and time. */
export function describeClash(
  requirements: readonly Requirement[],
  of: {
    readonly problem: Problem;
    readonly hands: readonly RunInHand[];
    readonly zone: string;
    readonly seed: number;
  },
): ConflictClash {
  const { problem, seed } = of;
  const clash = clashOf(problem, requirements, LIKELY);
  const ways = relaxations(problem, requirements, { certainty: LIKELY, seed }).flatMap((way) => {
    const told = wayOutText(way, { ...of, clash });
    return told === undefined ? [] : [told];
  });
  return { text: clash === undefined ? null : clashText(clash, of), either: eitherText(ways), ways };
}

function eitherText(ways: readonly { readonly text: string }[]): string {
  const [first, ...more] = ways.map(({ text }) => text);
  if (first === undefined) return 'No single one of these is enough to give way: more stands behind.';
  if (more.length === 0) return `There is a plan if ${first}.`;
  return `There is a plan if either ${[first, ...more].join(', or ')}.`;
}

function clashText(
  clash: Clash,
  {
    problem,
    hands,
    zone,
  }: { readonly problem: Problem; readonly hands: readonly RunInHand[]; readonly zone: string },
): string {
  const at = (value: number): string => localText(minute(value), zone);
  const title = (id: string): string => `“${titleOfId(id, hands)}”`;
  const given =
    clash.given === undefined ? '' : `With ${title(clash.given.stage)} at ${at(clash.given.start)}, `;
  switch (clash.kind) {
    case 'hours': {
      const takes = problem.stages.find(({ id }) => id === clash.stage)?.duration ?? 0;
      const window = rangeText(clash.earliest, clash.latest, zone);
      return `${given}${title(clash.stage)} (${durationText(takes)}) may start ${window}${closedText(clash.closed, at)}.`;
    }
    case 'too-late': {
      const must = clash.by === 'latest' ? 'it must be by' : 'it has to start by';
      const can = clash.by === 'latest' ? 'can be' : 'can start';
      const reach = `${given}${title(clash.stage)} ${can} ${at(clash.earliest)} at the earliest`;
      return `${reach}; ${must} ${at(clash.due)}.`;
    }
    case 'too-early':
      return `${title(clash.stage)} has to start by ${at(clash.latest)}; it may not before ${at(clash.opens)}.`;
    case 'shared': {
      const each = clash.stages.map(({ stage, earliest, latest }) => {
        const takes = problem.stages.find(({ id }) => id === stage)?.duration ?? 0;
        return `${title(stage)} (${durationText(takes)}) may start ${rangeText(earliest, latest, zone)}`;
      });
      return `${each.join('; ')}.`;
    }
  }
}

function closedText(
  { from, to }: { readonly from: number | undefined; readonly to: number | undefined },
  at: (value: number) => string,
): string {
  if (from !== undefined && to !== undefined) return `; your hours end ${at(from)} and open again ${at(to)}`;
  if (to !== undefined) return `; your hours open ${at(to)}`;
  return from === undefined ? '' : `; your hours end ${at(from)}`;
}
