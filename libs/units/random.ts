/**
 * A seeded generator of numbers in [0, 1): xoshiro128** seeded through splitmix32
 * (Blackman and Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47(4), 2021).
 * Plans and odds must be reproducible, so randomness is always handed in.
 */
export interface Random {
  /** The next number, uniform in [0, 1), 32 bits of resolution. */
  next(): number;
}

/** @param seed any whole number; only its low 32 bits count. Same seed, same sequence. */
export function seededRandom(seed: number): Random {
  let mix = seed >>> 0;
  const splitmix = (): number => {
    mix = (mix + 0x9e3779b9) >>> 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  let a = splitmix();
  let b = splitmix();
  let c = splitmix();
  let d = splitmix();
  const rotate = (x: number, by: number): number => ((x << by) | (x >>> (32 - by))) >>> 0;
  return {
    next() {
      const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
      const shifted = (b << 9) >>> 0;
      c = (c ^ a) >>> 0;
      d = (d ^ b) >>> 0;
      b = (b ^ c) >>> 0;
      a = (a ^ d) >>> 0;
      c = (c ^ shifted) >>> 0;
      d = rotate(d, 11);
      return result / 0x1_0000_0000;
    },
  };
}
