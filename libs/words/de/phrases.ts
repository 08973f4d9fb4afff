import { countedOdds, countedPair, type Phrases } from '../phrases.js';

const bounds = { about: 'etwa', over: 'mehr als', under: 'weniger als' } as const;

export const phrases: Phrases = {
  odds: (probability) => {
    const { bound, count, of } = countedOdds(probability);
    return `${bounds[bound]} ${String(count)} von ${String(of)}`;
  },
  oddsInstead: (probability, before) => {
    const { a, b, of } = countedPair(probability, before);
    if (a === b) return `weiterhin ${phrases.odds(probability)}`;
    const told = (count: number): string =>
      count === 0 ? 'weniger als 1' : count === 100 ? 'mehr als 99' : String(count);
    return `${told(a)} statt ${told(b)} von ${String(of)}`;
  },
  pieces: (count) => `${count} Stück`,
  range: (low, high) => `${low} bis ${high}`,
  quoted: (title) => `„${title}“`,
  attempt: (number) => `${number}. Versuch`,
  fromOn: (time) => `ab ${time}`,
  onlyAt: (time) => `nur ${time}`,
  days: (count, isOne) => `${count} ${isOne ? 'Tag' : 'Tage'}`,
  weeks: (count, isOne) => `${count} ${isOne ? 'Woche' : 'Wochen'}`,
};
