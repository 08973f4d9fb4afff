import type { PlannedStage, RunGroup, RunPlan } from '#contract';
import type { Texts } from '#words';
import { piecesText } from './print-amounts.js';
import { wrap } from './text-layout.js';
import { printed } from './words/index.js';

/** The groups in which pieces part ways, a line each, and what none of them has; empty where all are alike. */
export function groupsSection(
  { groups, leftOut = [] }: Pick<RunPlan, 'groups' | 'leftOut'>,
  parts: readonly { readonly part: string; readonly title: string }[],
  texts: Texts,
): string {
  if (groups === undefined) return '';
  const words = printed[texts.language].plan;
  const titleOf = (key: string): string => parts.find(({ part }) => part === key)?.title ?? key;
  const lines = groups.map((group) =>
    words.group(group.title, piecesText(group.count, texts), texts.and(group.parts.map(titleOf))),
  );
  const missing = leftOut.length === 0 ? [] : [words.leftOut(texts.and(leftOut.map(({ title }) => title)))];
  return [...lines, ...missing].map((line) => wrap(line, 0, 100, 2)).join('\n');
}

/** A stage's title, and where it is not done for all pieces, of which groups and for how many. */
export function stageText(
  { title, pieces, groups }: Pick<PlannedStage, 'title' | 'pieces' | 'groups'>,
  all: readonly RunGroup[] | undefined,
  texts: Texts,
): string {
  if (pieces === undefined) return title;
  const words = printed[texts.language].plan;
  const named = groups?.map((key) => all?.find((group) => group.key === key)?.title ?? key);
  const count = piecesText(pieces, texts);
  return named === undefined
    ? words.forPieces(title, count)
    : words.forGroups(title, texts.and(named), count);
}
