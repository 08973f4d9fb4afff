import type { ResourceLoads } from '../loads.js';

/**
 * Resources, by number, that one step profile serves: those most of whose users use one of the others too, so that what
 * is looked up for one is there for all of them.
 */
export function profileGroups(all: readonly ResourceLoads[]): number[][] {
  const groups: { readonly members: number[]; readonly users: Set<number> }[] = [];
  all.forEach(({ loads }, r) => {
    const users = loads.flatMap(({ first, constant }) => (constant ? [] : [first]));
    const isAmong = (known: ReadonlySet<number>): boolean =>
      2 * users.filter((node) => known.has(node)).length > users.length;
    const group = groups.find((each) => isAmong(each.users));
    if (group === undefined) groups.push({ members: [r], users: new Set(users) });
    else {
      group.members.push(r);
      for (const node of users) group.users.add(node);
    }
  });
  return groups.map(({ members }) => members);
}
