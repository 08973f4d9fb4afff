import type { Issue } from '#units';

/** An issue for a name that refers to nothing. */
export function unknownName(
  path: (string | number)[],
  what: string,
  name: string,
  known: readonly { readonly key: string }[],
): Issue {
  const names = known.map((item) => item.key);
  const accepted = names.length === 0 ? `a ${what}, but there is none yet` : `one of ${names.join(', ')}`;
  return {
    code: `${what}.unknown`,
    path,
    message: `There is no ${what} “${name}”; accepted: ${accepted}.`,
    value: name,
    accepted,
  };
}

/** An issue for each key that was given before in the same list. */
export function repeatedKeys(list: string, items: readonly { readonly key: string }[]): Issue[] {
  return items.flatMap((item, i) =>
    items.findIndex((other) => other.key === item.key) === i
      ? []
      : [
          {
            code: 'input.repeated-key',
            path: [list, i, 'key'],
            message: `“${item.key}” is already taken in ${list}; accepted: a key of its own.`,
            value: item.key,
            accepted: 'a key of its own',
          },
        ],
  );
}
