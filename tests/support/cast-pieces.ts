import type { PieceHeatInputs } from '#clocks';

/** Lye of 33 %, 38 °C, 20 °C: 100 g of fats, 42 g of lye, 3 g of the rest. */
export const castPiece: PieceHeatInputs = {
  volumeMl: 80,
  densityGPerMl: 1.03,
  mould: 'silicone-cavity',
  kept: 'open',
  batterTemperatureC: 38,
  roomTemperatureC: 20,
  make: { fatsShare: 0.69, lyeShare: 0.29, lyePercent: 33, kohSharePercent: 0 },
  pace: 1,
  sugarPercent: 0,
};

/** The same batter in a loaf of 1.2 L. */
export const castLoaf: PieceHeatInputs = {
  ...castPiece,
  volumeMl: 1200,
  mould: 'lined-wood',
  kept: 'covered',
};
