import { mouldOf, type LogEntry, type Part, type PieceDesign } from '#contract';
import { isoInstant } from '#units';
import { isSetInto } from '../../input/part-condition.js';
import { makingStage } from '../../input/resolve-run.js';
import { liveAttempts, makingAttempt, type AssessedRun } from '../../assessed-run.js';
import { troubledRuns, troublesOf, type Candidate, type Situation } from '../candidate.js';

/** Points for a piece that lacks something of what was designed. */
const LESS_OF_A_PIECE = 5;

/**
 * Leaves decoration out that the trouble is about and that is not made yet, with what is made only to be set into it, the
 * way the log leaves a part out. What is cast in a mould is the piece itself and is not left out.
 */
export function dropParts(situation: Situation): Candidate[] {
  return troubledRuns(situation).flatMap((assessed) => {
    const { design, order } = assessed.run;
    const troubles = troublesOf(situation, assessed);
    const stages = new Set(troubles.flatMap((trouble) => trouble.stages));
    const parts = new Set(troubles.flatMap((trouble) => trouble.parts));
    const concerned = design.parts.filter(
      (part) =>
        isDecoration(part, design) &&
        makingAttempt(assessed, part.key)?.status === 'open' &&
        (parts.has(part.key) || design.stages.some((s) => s.part === part.key && stages.has(s.key))),
    );
    return concerned.map((part): Candidate => {
      const dropped = [part, ...onlyFor(part, assessed)];
      const titles = dropped.map(({ title }) => title);
      const keys = new Set(dropped.map(({ key }) => key));
      const handled = liveAttempts(assessed).filter(
        ({ stage }) => keys.has(stage.part) && makingStage(design, stage.part)?.key !== stage.key,
      );
      const names = handled.map(({ stage }) => stage.title);
      return {
        change: {
          kind: 'drop-parts',
          run: order.key,
          entries: dropped.map((each) => entryFor(each, situation)),
        },
        about: `drop-parts/${order.key}`,
        title: { code: 'remedy.leave-out', run: order.title, parts: titles },
        asks: [
          {
            what: { code: 'disturbance.without-parts', parts: titles },
            points: LESS_OF_A_PIECE * dropped.length,
          },
        ],
        worse: [
          { code: 'remedy.pieces-without', parts: titles },
          ...(names.length === 0 ? [] : [{ code: 'remedy.no-time-for' as const, stages: names }]),
        ],
        also: [],
        cautions: [],
      };
    });
  });
}

/** What is never in a mould, or is cast to be set into the piece. */
function isDecoration(part: Part, design: PieceDesign): boolean {
  if (mouldOf(part) === undefined) return true;
  return design.stages.some((stage) => stage.part === part.key && isSetInto(design, stage));
}

/** Other decoration that is made for nothing but stages of the part. */
function onlyFor({ key }: Part, assessed: AssessedRun): Part[] {
  const { design, stages } = assessed.run;
  return design.parts.filter((other) => {
    const making = makingStage(design, other.key);
    if (other.key === key || making === undefined || other.kind !== 'decor') return false;
    if (makingAttempt(assessed, other.key)?.status !== 'open') return false;
    const next = design.links.filter(({ from }) => from === making.key);
    return next.length > 0 && next.every(({ to }) => stages.get(to)?.part === key);
  });
}

/** A part that cannot be had in time falls short, and the log answers that by leaving it out. */
function entryFor({ key }: Part, { options }: Situation): LogEntry {
  const at = isoInstant(options.now);
  return {
    kind: 'mishap',
    part: key,
    mishap: 'ran-short',
    response: 'drop-part',
    onPurpose: true,
    at,
  };
}
