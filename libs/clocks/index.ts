/** From what a batch is made of, how and where, to when it changes state, how surely, and why. */
export { stateIds, states, type ClockName, type State, type StateId } from './states.js';
export {
  choices,
  measures,
  referenceInputs,
  type Choice,
  type ClockInputs,
  type Measure,
  type MeasureFacts,
} from './inputs.js';
export { checkInputs } from './check-inputs.js';
export type { Point } from './engine/factor-at.js';
export type { ChoiceRule, MeasureRule, Rule, RuleId } from './rule.js';
export { rules } from './rules.js';
export { forecast, type Beyond, type Forecast, type Reason } from './forecast.js';
export { evaluate, type Evaluation } from './evaluate.js';
export { offsetPrior } from './offset-prior.js';
export { ofTypicalWorkshop, withOffset, type ReasonedOffset } from './offset.js';
export { paceOf, type Pace } from './paces.js';
export { sensitivity, type Move, type StateMoves } from './sensitivity.js';
export { rulesVersion } from './rules-version.js';
export {
  floorList,
  ruleList,
  stateList,
  type FloorLine,
  type RuleLine,
  type StateLine,
} from './rule-list.js';
export { stretches, workingTime, type WayOfWorking, type WorkingTime } from './working-time.js';
export type { LogNormal, Truncation } from './engine/log-normal.js';
export {
  coolingForecast,
  fatsCooling,
  lyeCooling,
  type Cooling,
  type CoolingInputs,
} from './heat/cooling.js';
export { meltCooling } from './heat/melt-cooling.js';
export { heatBalance, heatCurve, type HeatBalance } from './heat/heat-balance.js';
export { aroundC, type Kept, type PieceHeatInputs } from './heat/piece-heat.js';
export { HANDLED_C } from './heat/warming.js';
export { curveRows } from './heat/curve-rows.js';
export { fatsForC } from './heat/mixing.js';
export type { BatterMake } from './heat/specific-heats.js';
export { band, quantile, quantiles, type Band } from './engine/quantile.js';
export { conditioned, zOf } from './engine/conditioned.js';
export { usualCureRule, type CureRule, type WeighIn } from './cure/weigh-in.js';
export type { CureOptions } from './cure/check-weigh-ins.js';
export type { DryingCurve } from './cure/drying-curve.js';
export type { PlausibleCurve } from './cure/plausible-curves.js';
export { fitCure, type CureFit } from './cure/fit-cure.js';
export { readyDay } from './cure/ready-day.js';
export { hasSettled } from './cure/has-settled.js';
export { oneOf, type Observation, type Sighting } from './lessons/observation.js';
export { evidenceOf, type Evidence, type RecipeEvidence, type SeenBatch } from './lessons/evidence.js';
export { BAND_SHARE, forecastFrom, judge, type LogForecast, type Verdict } from './lessons/judge-forecast.js';
export { learn, learnFrom } from './lessons/learn.js';
export type { Offset, OffsetPrior, Posterior, RecipeOffset } from './lessons/posterior.js';
