import { countedOdds, countedPair, type Phrases } from '../phrases.js';

export const phrases: Phrases = {
  odds: (probability) => {
    const { bound, count, of } = countedOdds(probability);
    return `${bound} ${String(count)} in ${String(of)}`;
  },
  oddsInstead: (probability, before) => {
    const { a, b, of } = countedPair(probability, before);
    return `${String(a)} in ${String(of)} instead of ${String(b)} in ${String(of)}`;
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
