import type { Random } from '#units';

/** What no one should send, and what a careless program does. */
const ODD: readonly unknown[] = [
  null,
  true,
  '',
  ' ',
  '\u0000',
  'a\u0000b',
  '\ud800',
  '\udc00x',
  '\u202eabc',
  '\u001b[31mred',
  '<script>alert(1)</script>',
  "'; DROP TABLE run; --",
  '../../etc/passwd',
  'x'.repeat(121),
  'x'.repeat(5000),
  'ключ',
  '9'.repeat(400),
  'NaN',
  '0001-01-01',
  '9999-12-31T23:59',
  '2026-02-30T10:00',
  '2026-11-27T18:00:00+99:99',
  '1e309 g',
  '-5 oz',
  '__proto__',
  'constructor',
  0,
  -0,
  -1,
  1.5,
  1e-320,
  1e308,
  -1e308,
  2 ** 31 - 1,
  2 ** 31,
  -(2 ** 31) - 1,
  2 ** 53,
  -(2 ** 53),
  [],
  {},
  [[[[]]]],
  { length: 1e9 },
  { toString: 1, toJSON: 1 },
];

export function pick<T>(random: Random, from: readonly T[]): T {
  const one = from[Math.floor(random.next() * from.length)];
  if (one === undefined) throw new RangeError('nothing to pick from');
  return one;
}

export function oddValue(random: Random): unknown {
  const roll = random.next();
  if (roll < 0.02) return nested(pick(random, [10, 63, 65, 500, 3000]));
  if (roll < 0.04) return Array.from({ length: pick(random, [21, 201, 1001]) }, () => pick(random, ODD));
  if (roll < 0.05) return Object.fromEntries(Array.from({ length: 200 }, (_, i) => [`f${String(i)}`, i]));
  return structuredClone(pick(random, ODD));
}

function nested(depth: number): unknown {
  let value: unknown = 0;
  for (let i = 0; i < depth; i += 1) value = i % 2 === 0 ? [value] : { a: value };
  return value;
}

/** The value with one thing in it changed: replaced, left out, added, repeated, or a number moved. */
export function mutated(value: unknown, random: Random): unknown {
  if (value === null || typeof value !== 'object' || random.next() < 0.08) return changed(value, random);
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...value }) as Record<string, unknown>;
  const names = Object.keys(copy);
  const roll = random.next();
  if (names.length === 0 || roll < 0.06) {
    copy[
      Array.isArray(value) ? String(names.length) : pick(random, ['extra', '__proto__x', 'a\u202eb', 'id'])
    ] = oddValue(random);
    return copy;
  }
  const name = pick(random, names);
  if (roll < 0.14 && !Array.isArray(value)) {
    const { [name]: _gone, ...rest } = copy;
    return rest;
  }
  if (roll < 0.2 && Array.isArray(value)) {
    const times = pick(random, [2, 21, 61, 201, 501]);
    return Array.from({ length: times }, (_, i) => (value as unknown[])[i % names.length]);
  }
  copy[name] = mutated(copy[name], random);
  return copy;
}

function changed(value: unknown, random: Random): unknown {
  if (typeof value === 'number' && random.next() < 0.6) {
    const by = pick(random, [-1, 1, 0.001, -value, value, value * 9, value * 1e4, -2 * value, 2 ** 31, 1e12]);
    return value + by;
  }
  if (typeof value === 'string' && random.next() < 0.3) {
    return pick(random, [
      value.toUpperCase(),
      `${value} `,
      value.slice(1),
      value.repeat(9),
      `${value}\u202e`,
    ]);
  }
  return oddValue(random);
}
