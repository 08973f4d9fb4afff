import type { LateLoss, Link, PieceDesign, Wait } from '#contract';
import { stageKindFacts } from './stage-kinds.js';

/** What coming too late loses, and why if the design says so itself. */
export interface Lateness {
  readonly loses: LateLoss;
  readonly reason?: string;
}

/**
 * What is lost where a stage comes later than a wait or a link lets it: as the design says, else as the row of its kind does
 * for the state that closes it, else as its kind does.
 */
export function latenessOf(
  design: Pick<PieceDesign, 'stages'>,
  { late, ...asked }: Pick<Link, 'to' | 'late'> | Pick<Wait, 'stage' | 'closes' | 'late'>,
): Lateness {
  if (late !== undefined) return late;
  const key = 'to' in asked ? asked.to : asked.stage;
  const kind = design.stages.find((stage) => stage.key === key)?.kind;
  if (kind === undefined) return { loses: 'pieces' };
  const { waits, embed, batch = [], loses } = stageKindFacts[kind];
  const rows = [...[waits, embed].flatMap((each) => Object.values(each?.states ?? {})), ...batch];
  const row = 'closes' in asked ? rows.find(({ closes }) => closes === asked.closes) : undefined;
  return { loses: row?.loses ?? loses };
}
