import type { Issue } from '#units';

/** Far more levels than anything in the contract has. */
const MOST_LEVELS = 64;
/** Far more values than a run file with a log as long as it may be. */
const MOST_VALUES = 100_000;

/** PostgreSQL keeps neither the character U+0000 nor half a surrogate pair in JSON. */
const UNSTORABLE = /\0|\p{Surrogate}/u;

/** A value on its way to be looked at, with the way to it from below, so that no path is built that is not told. */
interface Place {
  readonly value: unknown;
  readonly step: string | number;
  readonly above: Place | undefined;
  readonly level: number;
}

/**
 * What no schema asks about, and what must be known before one looks: text that cannot be stored, lists in lists without
 * end, more values than can be checked in no time. Walks without recursion, so that nothing sent can exhaust the stack.
 * @returns issues with paths from the value
 */
export function unkeepable(value: unknown): Issue[] {
  const issues: Issue[] = [];
  const waiting: Place[] = [{ value, step: '', above: undefined, level: 0 }];
  let seen = 0;
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    seen += 1;
    if (seen > MOST_VALUES) return [tooMany()];
    const { value: each, level } = place;
    if (typeof each === 'string' && UNSTORABLE.test(each)) issues.push(unstorable(place));
    if (each === null || typeof each !== 'object') continue;
    if (level === MOST_LEVELS) return [tooDeep(place)];
    for (const [name, inner] of Object.entries(each)) {
      if (UNSTORABLE.test(name)) issues.push(unstorable(place));
      else
        waiting.push({
          value: inner,
          step: Array.isArray(each) ? Number(name) : name,
          above: place,
          level: level + 1,
        });
    }
  }
  return issues.reverse();
}

function unstorable(place: Place): Issue {
  return { code: 'input.unstorable-text', path: pathTo(place) };
}

function tooDeep(place: Place): Issue {
  return { code: 'input.too-deep', path: pathTo(place).slice(0, 3), most: MOST_LEVELS };
}

function tooMany(): Issue {
  return { code: 'input.too-many-values', path: [], most: MOST_VALUES };
}

function pathTo(place: Place): (string | number)[] {
  const path: (string | number)[] = [];
  for (let at: Place = place; at.above !== undefined; at = at.above) path.unshift(at.step);
  return path;
}
