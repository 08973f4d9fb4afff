import { fromSheet } from '#chemistry';

/** What an invented supplier writes of an olive oil; tests change what they are about. */
export const oliveSheet = {
  key: 'own-olive',
  title: 'Olive oil of our own (invented)',
  saponificationMgKohPerG: { low: 188, used: 189, high: 190 },
  iodine: { low: 80, high: 88 },
  fattyAcidsPercent: { 'C16:0': 12, 'C18:1': 75, 'C18:2': 10 },
  densityGPerMl: 0.913,
  source: 'invented supplier’s sheet',
};

export const ownOlive = fromSheet(oliveSheet);
