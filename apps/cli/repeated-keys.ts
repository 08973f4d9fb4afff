import { isPair, isScalar, visit, type Document } from 'yaml';

/** A key that stands twice in one mapping, and where the second time. */
export interface RepeatedKey {
  readonly name: string;
  readonly offset: number;
}

/**
 * Keys that stand in a mapping twice, of which YAML 1.2 (section 3.2.1.3) asks that they be unique. The parser's own
 * check compares each key with each other, which takes minutes for a mapping of some ten thousand.
 */
export function repeatedKeys(document: Document): RepeatedKey[] {
  const repeated: RepeatedKey[] = [];
  visit(document, {
    Map(_key, map) {
      const seen = new Set<unknown>();
      for (const pair of map.items) {
        if (!isPair(pair) || !isScalar(pair.key)) continue;
        const { value, range } = pair.key;
        if (seen.has(value)) repeated.push({ name: String(value), offset: range?.[0] ?? 0 });
        seen.add(value);
      }
    },
  });
  return repeated;
}
