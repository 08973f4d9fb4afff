/**
 * A whole list, oldest first, of which the latest come first, a page at a time.
 * @param size of a full page; one that is not full is the last
 * @param ask the page before a row, by its id; without one, the latest
 */
export async function allPages<T extends { readonly id: string }>(
  size: number,
  ask: (before: string | undefined) => Promise<readonly T[]>,
): Promise<T[]> {
  const all: T[] = [];
  for (;;) {
    const page = await ask(all[0]?.id);
    all.unshift(...page);
    if (page.length < size) return all;
  }
}
