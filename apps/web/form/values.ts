import { pathText } from '#units';

/** What a form holds: what JSON can hold. A number that cannot be read stays as the text that was typed. */
export type Value = string | number | boolean | null | undefined | readonly Value[] | Group;
export interface Group {
  readonly [name: string]: Value;
}
/** Property names and list positions from the root of what is edited, as in the issues of the API. */
export type Path = readonly (string | number)[];

/** What stands at a path; undefined where nothing does. */
export function valueAt(root: Value, path: Path): Value {
  return path.reduce<Value>(
    (at, step) => (at !== null && typeof at === 'object' ? (at as Group)[step] : undefined),
    root,
  );
}

/** The text at a path; empty where there is none. */
export function textAt(root: Value, path: Path): string {
  const found = valueAt(root, path);
  return typeof found === 'string' ? found : '';
}

/** The list at a path; empty where there is none. */
export function listAt(root: Value, path: Path): readonly Value[] {
  const found = valueAt(root, path);
  return Array.isArray(found) ? (found as readonly Value[]) : [];
}

/**
 * The same with another value at a path; what is missing on the way is made.
 * @param value undefined takes a property away
 */
export function withValue(root: Value, path: Path, value: Value): Value {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list = Array.isArray(root) ? [...(root as readonly Value[])] : [];
    list[step] = withValue(list[step], rest, value);
    return list;
  }
  const group = root !== null && typeof root === 'object' && !Array.isArray(root) ? (root as Group) : {};
  const inner = withValue(group[step], rest, value);
  if (inner !== undefined) return { ...group, [step]: inner };
  const { [step]: _gone, ...others } = group;
  return others;
}

/** The same with one more at the end of a list. */
export function withItem(root: Value, path: Path, item: Value): Value {
  return withValue(root, path, [...listAt(root, path), item]);
}

/** The same without one item of a list. */
export function withoutItem(root: Value, path: Path, index: number): Value {
  return withValue(
    root,
    path,
    listAt(root, path).filter((_, i) => i !== index),
  );
}

/** The same with an item of a list moved; a place outside the list leaves all as it is. */
export function withMoved(root: Value, path: Path, from: number, to: number): Value {
  const list = listAt(root, path);
  if (to < 0 || to >= list.length) return root;
  const rest = list.filter((_, i) => i !== from);
  return withValue(root, path, [...rest.slice(0, to), list[from], ...rest.slice(to)]);
}

/** Whether two values say the same, whatever the order of their properties. */
export function isSame(a: Value, b: Value): boolean {
  return differences(a, b).length === 0;
}

export interface Difference {
  /** `fats[0].percent` */
  readonly path: string;
  readonly mine: Value;
  readonly theirs: Value;
}

/** Where two versions of one thing differ, leaf by leaf. */
export function differences(mine: Value, theirs: Value): Difference[] {
  return differencesAt(mine, theirs, []);
}

function differencesAt(mine: Value, theirs: Value, path: Path): Difference[] {
  if (isBranch(mine) && isBranch(theirs) && Array.isArray(mine) === Array.isArray(theirs)) {
    const steps = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])];
    return steps.flatMap((step) => {
      const at = Array.isArray(mine) ? Number(step) : step;
      return differencesAt(valueAt(mine, [step]), valueAt(theirs, [step]), [...path, at]);
    });
  }
  return mine === theirs ? [] : [{ path: pathText(path), mine, theirs }];
}

function isBranch(value: Value): value is Group | readonly Value[] {
  return value !== null && typeof value === 'object';
}
