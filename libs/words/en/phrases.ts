import { countedOdds, countedPair, type Phrases } from '../phrases.js';

export const phrases: Phrases = {
  odds: (probability) => {
    const { bound, count, of } = countedOdds(probability);
    return `${bound} ${String(count)} in ${String(of)}`;
  },
  oddsInstead: (probability, before) => {
    const { a, b, of } = countedPair(probability, before);
    if (a === b) return `still ${phrases.odds(probability)}`;
    const told = (count: number): string =>
      `${count === 0 ? 'under 1' : count === 100 ? 'over 99' : String(count)} in ${String(of)}`;
    return `${told(a)} instead of ${told(b)}`;
  },
  pieces: (count, isOne) => `${count} ${isOne ? 'piece' : 'pieces'}`,
  range: (low, high) => `${low} to ${high}`,
  quoted: (title) => `“${title}”`,
  attempt: (number) => `attempt ${number}`,
  fromOn: (time) => `from ${time} on`,
  onlyAt: (time) => `${time} only`,
  days: (count, isOne) => `${count} ${isOne ? 'day' : 'days'}`,
  weeks: (count, isOne) => `${count} ${isOne ? 'week' : 'weeks'}`,
};
