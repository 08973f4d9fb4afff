/** The three ways in which the water of the lye can be told, by their fields in the contract. */
export const waterWays = ['lyeConcentrationPercent', 'waterPerLye', 'waterPercentOfFats'] as const;
export type WaterWay = (typeof waterWays)[number];

/** In which way a recipe tells its water; by concentration where it does not tell it. */
export function waterWay(recipe: { readonly [way in WaterWay]?: unknown }): WaterWay {
  return waterWays.find((way) => recipe[way] !== undefined) ?? 'lyeConcentrationPercent';
}

/** What the water of a batch comes to in each way, as the API tells it. */
export interface WaterViews {
  readonly lyeConcentrationPercent: number;
  readonly waterPerLye: number;
  readonly waterPercentOfFats: number;
}

const digits: Readonly<Record<WaterWay, number>> = {
  lyeConcentrationPercent: 1,
  waterPerLye: 2,
  waterPercentOfFats: 1,
};
/** Of a usual recipe; for a change of ways before the API has told what the water comes to. */
const usual: WaterViews = { lyeConcentrationPercent: 33, waterPerLye: 2, waterPercentOfFats: 30 };

/** The same water told in another way, rounded as far as a person would write it. */
export function waterIn(way: WaterWay, views: WaterViews | undefined): number {
  return Number((views ?? usual)[way].toFixed(digits[way]));
}
