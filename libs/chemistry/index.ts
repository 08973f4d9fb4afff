/** What goes into a batter, how much of it, and how much room it takes. Sources: SOURCES.md. */
export type {
  Addition,
  BatterRecipe,
  Colourant,
  Fragrance,
  WaterStatement,
  WrittenRecipe,
} from './batter-recipe.js';
export { acids, type AcidName, type AcidShare } from './acids.js';
export { batchForFats, batchForVolume, type BatchAmounts, type NamedMass } from './batch-amounts.js';
export { checkFat } from './check-fat.js';
export { checkRecipe } from './check-recipe.js';
export { fatDensity, lundDensity, triglycerideExpansionGPerMlPerC } from './fat-density.js';
export type { FatEvidence, FatFacts, FatKind, FatTag, Limits } from './fat-facts.js';
export { fatSharePercent, hardFattyAcidsPercent, oleicPercent } from './fat-profile.js';
export { fatTable } from './fat-table.js';
export { fromSheet, type SheetFat } from './fats/sheet-fat.js';
export { shippedFats } from './fats/shipped-fats.js';
export type { ShippedFatFacts } from './fats/standard-fat.js';
export { lyeForFats, superfatRange, type LyeAmounts } from './lye-amounts.js';
export { kohDensity } from './koh-density.js';
export { lyeDensity } from './lye-density.js';
export { lyeSolutionDensity, type LyeSolution } from './lye-solution-density.js';
export { fattyAcidMolarMass, molarMass, naohPerKoh } from './molar-mass.js';
export { questionsAbout } from './questions-about.js';
export { recipeRisks } from './recipe-risks.js';
export type { Risk } from './risk.js';
export {
  saponificationValueByTitration,
  saponificationValueOfFreeAcids,
  theoreticalSaponificationValue,
  type Titration,
} from './saponification-value.js';
export { batterOf, waterViews, USUAL_LYE_CONCENTRATION, type WaterViews } from './water.js';
export { beadMl, coatMl, weighedMl, type Bead, type Coat } from './demand/amount-per-piece.js';
export { chanceOfTooFew, piecesWithSpares } from './demand/decor.js';
export {
  batchFor,
  demandOf,
  leftover,
  piecesCovered,
  shortageChance,
  type Demand,
  type Leftover,
  type Losses,
} from './demand/demand.js';
export {
  describeUse,
  learnUse,
  priorUse,
  type ExpectedUse,
  type PieceUse,
  type Weighing,
} from './demand/piece-use.js';
export { freshVolume } from './volumes/fresh-volume.js';
export { shapeVolume, type CavityShape } from './volumes/shape-volume.js';
export { waterDensity } from './volumes/water-density.js';
export { waterFillVolume } from './volumes/water-fill-volume.js';
