/** Longest a key may be, and what it may hold, after the contract. */
const LONGEST = 40;

/**
 * The short name of something new, made from its title, so that nobody has to think of one.
 * @param taken names that are in use
 */
export function newKey(title: string, taken: readonly string[]): string {
  const plain = title
    .toLowerCase()
    .replaceAll('ä', 'ae')
    .replaceAll('ö', 'oe')
    .replaceAll('ü', 'ue')
    .replaceAll('ß', 'ss')
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^[^a-z]+|-+$/g, '');
  const base = plain === '' ? 'new' : plain.slice(0, LONGEST).replace(/-+$/, '');
  if (!taken.includes(base)) return base;
  for (let number = 2; ; number += 1) {
    const tail = `-${String(number)}`;
    const name = `${base.slice(0, LONGEST - tail.length).replace(/-+$/, '')}${tail}`;
    if (!taken.includes(name)) return name;
  }
}
