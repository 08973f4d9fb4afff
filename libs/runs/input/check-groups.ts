import type { PieceDesign, RunOrder } from '#contract';
import type { Issue } from '#units';
import { repeatedKeys, unknownName } from './name-issues.js';
import { hostOf } from './part-condition.js';
import { piecesIn } from './pieces.js';
import { stageKindFacts } from './stage-kinds.js';

/**
 * Checks that the groups of a run make sense: they come to all its pieces, each names parts of the design once, and what
 * is put onto another part has one to be put onto.
 * @returns issues with paths from the order's root
 */
export function checkGroups({ count, groups }: RunOrder, design: PieceDesign): Issue[] {
  if (groups === undefined) return [];
  const issues = repeatedKeys('groups', groups);
  const titles = new Map(design.parts.map(({ key, title }) => [key, title]));
  groups.forEach((group, i) => {
    group.parts.forEach((part, j) => {
      const path = ['groups', i, 'parts', j];
      const title = titles.get(part);
      if (title === undefined) issues.push(unknownName(path, 'part', part, design.parts));
      else if (group.parts.indexOf(part) < j) {
        issues.push({ code: 'run.group-part-twice', path, value: part, group: group.title, part: title });
      } else if (lacksHost(design, part, group.parts)) {
        issues.push({ code: 'run.group-without-host', path, value: part, group: group.title, part: title });
      }
    });
  });
  const sum = piecesIn(groups);
  if (sum !== count) {
    const accepted = { kind: 'range', low: count, high: count, unit: 'pieces' } as const;
    issues.push({ code: 'run.groups-sum', path: ['groups'], value: sum, accepted, ...{ sum, count } });
  }
  return issues;
}

/** Whether a part that is put onto another on pieces of the design has none on pieces with these parts. */
function lacksHost(design: PieceDesign, part: string, parts: readonly string[]): boolean {
  const absent = new Set(design.parts.flatMap(({ key }) => (parts.includes(key) ? [] : [key])));
  return design.stages.some(
    (stage) =>
      stage.part === part &&
      stageKindFacts[stage.kind].hosted !== undefined &&
      hostOf(design, stage) !== undefined &&
      hostOf(design, stage, absent) === undefined,
  );
}
