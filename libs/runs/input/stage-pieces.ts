import type { Link, PieceDesign, RunGroup, RunOrder, Stage } from '#contract';
import { castTogether } from './part-condition.js';
import { mixedTogether } from './mixed-together.js';
import { piecesAlike, piecesIn, type RunDesign } from './pieces.js';
import { stageKindFacts } from './stage-kinds.js';
import type { Outline } from './stage-order.js';

/**
 * Whether a stage is done for pieces that have these parts: for those that have its own part, and what handles a cavity
 * for those that have anything in it, unless a stage of the same kind is theirs alone. What prepares a batch is done for all
 * pieces that have anything of it.
 */
export function isDoneFor(design: Outline, { kind, part }: Stage, has: ReadonlySet<string>): boolean {
  if (has.has(part)) return true;
  const { makes, prepares } = stageKindFacts[kind];
  if (prepares === true) return mixedTogether(design, part).some(({ key }) => has.has(key));
  if (makes) return false;
  const shared = castTogether(design, part).some(({ key }) => has.has(key));
  return shared && !design.stages.some((other) => other.kind === kind && has.has(other.part));
}

/** The groups for whose pieces a stage is done. @returns undefined where all pieces of the run are alike */
export function groupsOfStage(design: RunDesign, stage: Stage): RunGroup[] | undefined {
  return design.groups?.filter(({ parts }) => isDoneFor(design, stage, new Set(parts)));
}

/** Pieces of a run for which a stage is done. */
export function piecesOfStage(
  { order, design }: { readonly order: RunOrder; readonly design: RunDesign },
  stage: Stage,
): number {
  const groups = groupsOfStage(design, stage);
  return groups === undefined ? order.count : piecesIn(groups);
}

/**
 * A design as a run with groups makes it. Parts that no group has are not made, and their stages not done; what the
 * design says of two stages, or of a stage and a part, holds where a piece has both. Of what comes between two stages
 * of a piece that it goes without, their order is left.
 */
export function forGroups(design: PieceDesign, groups: readonly RunGroup[] | undefined): RunDesign {
  if (groups === undefined) return design;
  const parts = design.parts.filter(({ key }) => groups.some((group) => group.parts.includes(key)));
  const made: RunDesign = { ...design, parts, groups };
  const kept = new Set(parts.map(({ key }) => key));
  const stages = design.stages
    .flatMap((stage) => (kept.has(stage.part) ? [stage] : standInFor(design, stage, kept)))
    .filter((stage) => piecesAlike(made).some((has) => isDoneFor(made, stage, has)));
  const byKey = new Map(stages.map((stage) => [stage.key, stage]));
  const concerns = (stage: string, part: string): boolean => {
    const found = byKey.get(stage);
    return (
      found !== undefined && piecesAlike(made).some((has) => has.has(part) && isDoneFor(made, found, has))
    );
  };
  return {
    ...made,
    stages,
    links: linksOf({ ...made, stages }),
    waits: design.waits.filter(({ stage, part }) => concerns(stage, part)),
    without: design.without.filter(({ stage, part }) => concerns(stage, part)),
  };
}

/**
 * A stage whose part is not made is done all the same where it handles a cavity, or prepares a batch, that others have part
 * in: it is then said of one of them, unless a stage of the same kind is.
 */
function standInFor(design: PieceDesign, stage: Stage, kept: ReadonlySet<string>): Stage[] {
  const { makes, prepares } = stageKindFacts[stage.kind];
  const sharing = prepares === true ? mixedTogether(design, stage.part) : castTogether(design, stage.part);
  const others = sharing.map(({ key }) => key).filter((key) => kept.has(key));
  const isSaid = design.stages.some(({ kind, part }) => kind === stage.kind && others.includes(part));
  const [part] = others;
  return (makes && prepares !== true) || isSaid || part === undefined ? [] : [{ ...stage, part }];
}

/** Links as each piece has them, those of pieces that go without a stage between bridged. */
function linksOf(design: RunDesign): Link[] {
  const links: Link[] = [];
  const add = (link: Link): void => {
    const isThere = links.some(
      ({ from, to, atLeastMin, atMostMin }) =>
        from === link.from &&
        to === link.to &&
        atLeastMin === link.atLeastMin &&
        atMostMin === link.atMostMin,
    );
    if (!isThere) links.push(link);
  };
  const done = piecesAlike(design).map(
    (has) => new Set(design.stages.flatMap((stage) => (isDoneFor(design, stage, has) ? [stage.key] : []))),
  );
  for (const link of design.links) {
    for (const stages of done) {
      if (!stages.has(link.from)) continue;
      if (stages.has(link.to)) add(link);
      else for (const to of nextOf(design, link.to, stages)) add({ from: link.from, to, atLeastMin: 0 });
    }
  }
  return links;
}

/** The stages that come first after one which is not done. */
function nextOf(design: RunDesign, from: string, done: ReadonlySet<string>): string[] {
  const reached = new Set([from]);
  // A set that grows while it is walked through is walked through to its end.
  for (const key of reached) {
    if (done.has(key)) continue;
    for (const link of design.links) if (link.from === key) reached.add(link.to);
  }
  return [...reached].filter((key) => done.has(key));
}
