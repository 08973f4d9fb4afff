import type { Issue } from '#units';
import { listAt, textAt, valueAt, type Path, type Value } from '../../form/values.js';

/** What a part or stage is called while it has no name. */
export interface PlaceWords {
  readonly partNumber: (number: number) => string;
  readonly stageNumber: (number: number) => string;
}

/**
 * The part or stage that a path of a design lies in. What is said of a link or a wait is said of the stage that waits.
 * @returns undefined where it lies in neither
 */
function itemOf(design: Value, [list, index]: Path): ['parts' | 'stages', number] | undefined {
  if (typeof index !== 'number') return undefined;
  if (list === 'parts' || list === 'stages') return [list, index];
  const field = list === 'links' ? 'to' : list === 'waits' || list === 'without' ? 'stage' : undefined;
  if (field === undefined || list === undefined) return undefined;
  const key = valueAt(design, [list, index, field]);
  const stage = listAt(design, ['stages']).findIndex((each) => valueAt(each, ['key']) === key);
  return stage < 0 ? undefined : ['stages', stage];
}

/** The title of the part or stage that a path lies in. */
export function titleAround(design: Value, path: Path, words: PlaceWords): string | undefined {
  const item = itemOf(design, path);
  if (item === undefined) return undefined;
  const [list, index] = item;
  const number = list === 'parts' ? words.partNumber : words.stageNumber;
  return textAt(design, [list, index, 'title']).trim() || number(index + 1);
}

/** What is wrong with one part or stage, and all that belongs to it. */
export function issuesOfItem(
  design: Value,
  issues: readonly Issue[],
  list: 'parts' | 'stages',
  index: number,
): Issue[] {
  return issues.filter(({ path }) => {
    const item = itemOf(design, path);
    return item !== undefined && item[0] === list && item[1] === index;
  });
}
