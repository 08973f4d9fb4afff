import type { PieceDesign, Stage } from '#contract';
import type { PartsOfPieces } from './pieces.js';
import { stageKindFacts } from './stage-kinds.js';

/** What of a design its order follows from. */
export type Outline = Pick<PieceDesign, 'parts' | 'stages' | 'links' | 'waits'> &
  Partial<Pick<PieceDesign, 'without' | 'adds'>> &
  Pick<PartsOfPieces, 'groups'>;

/** The stage that makes a part; the first where several do, which a checked design has not. */
export function makingStage(design: Outline, part: string): Stage | undefined {
  return design.stages.find((stage) => stage.part === part && stageKindFacts[stage.kind].makes);
}

/** Whether one stage comes before another by the links and waits of a design. */
export function leadsTo(design: Outline, from: string, to: string): boolean {
  const reached = new Set([from]);
  // A set that grows while it is walked through is walked through to its end.
  for (const key of reached) {
    const makes = design.stages.filter(
      (stage) => stage.key === key && makingStage(design, stage.part) === stage,
    );
    for (const link of design.links) if (link.from === key) reached.add(link.to);
    for (const { part } of makes) {
      for (const wait of design.waits) if (wait.part === part) reached.add(wait.stage);
      for (const stage of design.stages) if (stage.part === part) reached.add(stage.key);
    }
  }
  return reached.has(to);
}

/**
 * Whether a stage is meant to come before another: by links and waits, and where these do not say, by their places in
 * the list, as a maker writes stages down in the order in which they are done.
 */
export function isBefore(design: Outline, first: Stage, then: Stage): boolean {
  if (leadsTo(design, first.key, then.key)) return first.key !== then.key;
  if (leadsTo(design, then.key, first.key)) return false;
  return design.stages.indexOf(first) < design.stages.indexOf(then);
}
