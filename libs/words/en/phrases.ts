import { countedOdds, type Phrases } from '../phrases.js';

export const phrases: Phrases = {
  odds: (probability) => {
    const { bound, count, of } = countedOdds(probability);
    return `${bound} ${String(count)} in ${String(of)}`;
  },
  range: (low, high) => `${low} to ${high}`,
  quoted: (title) => `“${title}”`,
  days: (count, isOne) => `${count} ${isOne ? 'day' : 'days'}`,
  weeks: (count, isOne) => `${count} ${isOne ? 'week' : 'weeks'}`,
};
