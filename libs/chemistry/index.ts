/** What goes into a batter, how much of it, and how much room it takes. Sources: SOURCES.md. */
export type {
  AcidName,
  AcidShare,
  Addition,
  BatchSize,
  BatterRecipe,
  Colourant,
  FatAmount,
  Fragrance,
  FragranceBehaviour,
  LiquidAcid,
  LiquidShare,
  WaterStatement,
  WrittenRecipe,
} from './recipe/batter-recipe.js';
export { allergenNames, RINSE_OFF_THRESHOLD_PERCENT } from './fragrance/allergens.js';
export { checkFragrances } from './batter/check-fragrances.js';
export { behaviourTogether, quickestBehaviour } from './fragrance/behaviour.js';
export type { DeclaredAllergen } from './fragrance/declared-allergens.js';
export { acids } from './lye/acids.js';
export {
  batchForFats,
  batchForVolume,
  type BatchAmounts,
  type LiquidMass,
  type NamedMass,
} from './batter/batch-amounts.js';
export { checkFat } from './fats/check-fat.js';
export { checkRecipe } from './batter/check-recipe.js';
export { fatDensity, lundDensity, triglycerideExpansionGPerMlPerC } from './fats/fat-density.js';
export type { FatEvidence, FatFacts, FatKind, FatTag, Limits } from './fats/fat-facts.js';
export {
  fatSharePercent,
  freeAcidsPercent,
  hardFattyAcidsPercent,
  hardWaxPercent,
  oleicPercent,
  polyunsaturatedPercent,
  solidFatsPercent,
} from './fats/fat-profile.js';
export { ingredientLists, type IngredientLists } from './label/ingredient-lists.js';
export type { LabelIngredient } from './label/label-ingredient.js';
export { givenFatsG } from './fats/fat-shares.js';
export { fatTable } from './fats/fat-table.js';
export { fromSheet, type SheetFat } from './fats/table/sheet-fat.js';
export { shippedFats } from './fats/table/shipped-fats.js';
export type { ShippedFatFacts } from './fats/table/standard-fat.js';
export type { LiquidAllergen, LiquidFacts, LiquidFigures, LiquidKind } from './liquids/liquid-facts.js';
export { liquidTable, shippedLiquids } from './liquids/liquid-table.js';
export { lyeForFats, superfatRange, type LyeAmounts } from './lye/lye-amounts.js';
export { kohDensity } from './lye/koh-density.js';
export { lyeDensity } from './lye/lye-density.js';
export { lyeSolutionDensity, type LyeSolution } from './lye/lye-solution-density.js';
export { fattyAcidMolarMass, molarMass, naohPerKoh } from './fats/molar-mass.js';
export { questionsAbout } from './fats/questions-about.js';
export { replacedFat, type ReplacedFat } from './fats/replaced-fat.js';
export {
  readRecipeText,
  recipeTextLimits,
  type LineOutcome,
  type ReadLine,
  type ReadRecipeText,
  type TextFat,
} from './recipe-text/read-recipe-text.js';
export type { TextAmount } from './recipe-text/amount-of.js';
export type { OtherIngredient } from './recipe-text/other-ingredients.js';
export { alcoholPercent, sugarAndSaltOf, sugarInAdditions } from './batter/liquid-risks.js';
export { recipeRisks } from './batter/recipe-risks.js';
export type { Risk } from './batter/risk.js';
export {
  saponificationValueByTitration,
  saponificationValueOfFreeAcids,
  theoreticalSaponificationValue,
  type Titration,
} from './fats/saponification-value.js';
export { batterOf, effectiveLyePercent, type WaterViews } from './lye/water.js';
export { beadMl, coatMl, weighedMl, type Bead, type Coat } from './demand/amount-per-piece.js';
export { isSureEnough } from './demand/certainty.js';
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
export { shapeSurface } from './volumes/shape-surface.js';
export { shapeVolume, type CavityShape } from './volumes/shape-volume.js';
export { waterFillVolume } from './volumes/water-fill-volume.js';
