import type { Issue } from '#units';
import { lundDensity } from './fat-density.js';
import type { FatFacts } from './fat-facts.js';
import { fattyAcidMolarMass, naohPerKoh } from './molar-mass.js';
import { replacedFat } from './replaced-fat.js';
import { saponificationValueOfFreeAcids, theoreticalSaponificationValue } from './saponification-value.js';

/** The middle of a standard's range lies within 4 % of what its profile gives; beyond this it is asked about. */
const SAPONIFICATION_TOLERANCE = 0.05;

/**
 * No wax in soap takes more: beeswax about 87 to 104 mg KOH/g, jojoba about 92, lanolin 90 to 105 (from memory). A
 * triglyceride entered as a wax does, and would be asked nothing else.
 */
const WAX_CEILING = 150;

/** Lots of one fat lie within 5 % of the middle of its standard's range; beyond, it is another fat or a slip. */
const REPLACED_TOLERANCE_PERCENT = 5;

/** Sheets leave out traces; what is missing below this is more than traces. */
const PROFILE_FLOOR_PERCENT = 95;

/** Lund's relation holds within 0.003 g/mL for the standards' fats; this leaves room for rounded sheets. */
const DENSITY_TOLERANCE_G_PER_ML = 0.02;

/** From this share on, hydroxy acids make a fat denser than Lund's relation knows [S5]. */
const HYDROXY_PERCENT = 5;

/**
 * What in a fat's figures is possible but unlikely, so that a slip on a sheet is seen before it is weighed.
 * The figures are held against each other:
 * - saponification value against the one its profile gives, less what is unsaponifiable; a value that would
 *   fit as mg NaOH per g is called that;
 * - the profile against 95 %;
 * - the density against Lund's relation, where there is an iodine value and little hydroxy acid.
 * A wax has no profile and no such law; its saponification value is held against the highest that a wax has. Whatever the
 * kind, the value of a fat that replaces a shipped one is held against that one's.
 * @returns issues, paths from the fat itself, whatever `confirmed` says: `fat.saponification-as-naoh`,
 * `fat.saponification-doubtful`, `fat.wax-saponification-doubtful`, `fat.differs-from-shipped`,
 * `fat.profile-incomplete`, `fat.density-doubtful`. Meant for fats that `checkFat` does not refuse outright
 */
export function questionsAbout(fat: FatFacts): Issue[] {
  const own = fat.kind === 'wax' ? waxQuestions(fat) : saponificationQuestions(fat);
  // One slip is not to be asked about twice.
  const saponification = own.length > 0 ? own : replacedQuestions(fat);
  if (fat.kind === 'wax') return saponification;
  return [...saponification, ...profileQuestions(fat), ...densityQuestions(fat)];
}

function waxQuestions(fat: FatFacts): Issue[] {
  const { used } = fat.saponificationMgKohPerG;
  if (used <= WAX_CEILING) return [];
  return [
    {
      code: 'fat.wax-saponification-doubtful',
      path: ['saponificationMgKohPerG', 'used'],
      value: used,
      accepted: { kind: 'range', low: 20, high: WAX_CEILING, unit: 'mg KOH/g' },
      ...{ title: fat.title, used, most: WAX_CEILING },
    },
  ];
}

function replacedQuestions(fat: FatFacts): Issue[] {
  const replaced = replacedFat(fat);
  if (replaced === undefined || Math.abs(replaced.differsByPercent) <= REPLACED_TOLERANCE_PERCENT) return [];
  const { used } = fat.saponificationMgKohPerG;
  const { shipped, differsByPercent } = replaced;
  const bound = (side: number): number => shipped * (1 + (side * REPLACED_TOLERANCE_PERCENT) / 100);
  return [
    {
      code: 'fat.differs-from-shipped',
      path: ['saponificationMgKohPerG', 'used'],
      value: used,
      accepted: { kind: 'range', low: bound(-1), high: bound(1), unit: 'mg KOH/g' },
      ...{ title: fat.title, used, shipped, differsByPercent },
    },
  ];
}

function saponificationQuestions(fat: FatFacts): Issue[] {
  const expected = expectedSaponification(fat);
  if (expected === undefined) return [];
  const { used } = fat.saponificationMgKohPerG;
  if (used >= expected.low && used <= expected.high) return [];
  const asKoh = used / naohPerKoh;
  const asNaoh = asKoh >= expected.low && asKoh <= expected.high;
  const told = {
    path: ['saponificationMgKohPerG', 'used'],
    value: used,
    accepted: { kind: 'range', low: expected.low, high: expected.high, unit: 'mg KOH/g' },
    ...{ title: fat.title, used, expected: expected.theoretical },
  } as const;
  return [
    asNaoh
      ? { code: 'fat.saponification-as-naoh', ...told, asKoh }
      : { code: 'fat.saponification-doubtful', ...told },
  ];
}

/** @returns undefined where the profile gives no value */
function expectedSaponification(
  fat: FatFacts,
): { readonly theoretical: number; readonly low: number; readonly high: number } | undefined {
  const entries = Object.entries(fat.fattyAcidsPercent);
  const known = entries.every(([name, share]) => fattyAcidMolarMass(name) !== undefined && share >= 0);
  if (!known || !entries.some(([, share]) => share > 0)) return undefined;
  const theoretical =
    fat.kind === 'fatty-acid'
      ? saponificationValueOfFreeAcids(fat.fattyAcidsPercent)
      : theoreticalSaponificationValue(fat.fattyAcidsPercent);
  const { low, high } = fat.unsaponifiablePercent ?? { low: 0, high: 0 };
  return {
    theoretical,
    low: theoretical * (1 - high / 100) * (1 - SAPONIFICATION_TOLERANCE),
    high: theoretical * (1 - low / 100) * (1 + SAPONIFICATION_TOLERANCE),
  };
}

function profileQuestions(fat: FatFacts): Issue[] {
  const sum = Object.values(fat.fattyAcidsPercent).reduce((total, share) => total + share, 0);
  if (!(sum < PROFILE_FLOOR_PERCENT)) return [];
  return [
    {
      code: 'fat.profile-incomplete',
      path: ['fattyAcidsPercent'],
      value: sum,
      accepted: { kind: 'range', low: PROFILE_FLOOR_PERCENT, high: 100, unit: '%' },
      ...{ title: fat.title, sum },
    },
  ];
}

function densityQuestions(fat: FatFacts): Issue[] {
  const hydroxy = fat.fattyAcidsPercent['ricinoleic'] ?? 0;
  if (fat.kind !== 'triglyceride' || fat.iodine === undefined || hydroxy > HYDROXY_PERCENT) return [];
  const iodine = (fat.iodine.low + fat.iodine.high) / 2;
  const saponification = likelySaponification(fat);
  const expected = lundDensity(saponification, iodine, 20);
  if (Math.abs(fat.densityGPerMl - expected) <= DENSITY_TOLERANCE_G_PER_ML) return [];
  const [low, high] = [expected - DENSITY_TOLERANCE_G_PER_ML, expected + DENSITY_TOLERANCE_G_PER_ML];
  return [
    {
      code: 'fat.density-doubtful',
      path: ['densityGPerMl'],
      value: fat.densityGPerMl,
      accepted: { kind: 'range', low, high, unit: 'g/mL' },
      ...{ title: fat.title, found: fat.densityGPerMl, expected },
    },
  ];
}

/** The value given, or the profile's where that one is doubtful: one slip is not to be asked about twice. */
function likelySaponification(fat: FatFacts): number {
  const { used } = fat.saponificationMgKohPerG;
  const expected = expectedSaponification(fat);
  const doubtful = expected !== undefined && (used < expected.low || used > expected.high);
  return doubtful ? expected.theoretical : used;
}
