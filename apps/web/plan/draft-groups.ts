import type { RunGroup } from '#contract';
import { newKey } from '../library/new-key.js';

/** A group of pieces as far as it is entered. */
export interface DraftGroup {
  /** Empty: by its number. */
  readonly title: string;
  /** As typed. */
  readonly count: string;
  readonly parts: readonly string[];
}

/** As the contract has it. */
export const MOST_GROUPS = 12;
const MOST_PIECES = 5000;

/** Groups to begin with: each has half of the pieces, and all parts until some are taken out. */
export function twoGroups(count: number, parts: readonly string[]): DraftGroup[] {
  const half = Math.ceil(count / 2);
  return [half, count - half].map((pieces) => ({ title: '', count: String(Math.max(1, pieces)), parts }));
}

/** The same with a title for each. @param titleOf for one without, by its number */
export function titled(groups: readonly DraftGroup[], titleOf: (number: number) => string): DraftGroup[] {
  return groups.map((group, i) => ({ ...group, title: group.title.trim() || titleOf(i + 1) }));
}

/** Pieces of a group. @returns undefined for what is no number of pieces */
export function piecesOf({ count }: DraftGroup): number | undefined {
  const pieces = /^\d{1,4}$/.test(count.trim()) ? Number(count) : 0;
  return pieces >= 1 && pieces <= MOST_PIECES ? pieces : undefined;
}

/** Pieces in all groups, as far as they are numbers. */
export function sumOf(groups: readonly DraftGroup[]): number {
  return groups.reduce((sum, group) => sum + (piecesOf(group) ?? 0), 0);
}

/**
 * The groups of an order for so many pieces.
 * @param groups titled
 * @returns undefined while something is missing: a number, a part, or pieces of the run that are in no group
 */
export function groupsOf(groups: readonly DraftGroup[], count: number): RunGroup[] | undefined {
  const isReady =
    sumOf(groups) === count &&
    groups.every((group) => piecesOf(group) !== undefined && group.parts.length > 0);
  if (!isReady) return undefined;
  const taken: string[] = [];
  return groups.map((group) => {
    const { title } = group;
    const key = newKey(title, taken);
    taken.push(key);
    return { key, title, count: piecesOf(group) ?? 1, parts: [...group.parts] };
  });
}
