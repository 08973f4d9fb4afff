import type { OddsBarWords } from '../en/odds-bar.js';

export const oddsBar: OddsBarWords = {
  of: 'Von 100 Läufen wie diesem',
  sound: (count, hasDay) => `${count} gelungen${hasDay ? ' bis zum Tag' : ''}`,
  late: (count) => `${count} gelungen, aber zu spät`,
  lost: (count) => `${count} misslungen`,
};
