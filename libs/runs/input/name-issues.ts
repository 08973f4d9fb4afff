import type { Issue } from '#units';

/** Kinds of things that others refer to by their keys. */
export type Referred = 'design' | 'recipe' | 'mould' | 'part' | 'stage' | 'equipment' | 'run' | 'group';

/** An issue for a name that refers to nothing. */
export function unknownName(
  path: (string | number)[],
  what: Referred,
  name: string,
  things: readonly { readonly key: string }[],
): Issue {
  const known = things.map(({ key }) => key);
  const accepted = known.length === 0 ? {} : ({ accepted: { kind: 'one-of', values: known } } as const);
  return { code: `${what}.unknown`, path, value: name, ...accepted, known };
}

/** An issue for each key that was given before in the same list. */
export function repeatedKeys(list: string, items: readonly { readonly key: string }[]): Issue[] {
  return items.flatMap((item, i): Issue[] => {
    if (items.findIndex((other) => other.key === item.key) === i) return [];
    const accepted = { kind: 'form', form: 'key-of-its-own' } as const;
    return [{ code: 'input.repeated-key', path: [list, i, 'key'], value: item.key, accepted, list }];
  });
}
