import type { Issue } from '#units';
import type { FatFacts } from './fat-facts.js';
import { questionsAbout } from './questions-about.js';
import { fattyAcidMolarMass } from './molar-mass.js';

/** Rounding on a supplier's sheet may carry a profile this far over 100 %. */
const PROFILE_CEILING = 100.5;

/**
 * Whether a fat's figures can be those of a fat, and whether they are likely.
 * @returns issues, paths from the fat itself; none when it can be used. Refused outright:
 * `fat.saponification-disordered`, `fat.unknown-fatty-acid`, `fat.fatty-acids-over-100`,
 * `fat.density-out-of-range`, `fat.expansion-out-of-range`, `fat.iodine-disordered`,
 * `fat.unsaponifiable-disordered`. If none of these, the questions of `questionsAbout`, unless the fat is
 * `confirmed`
 */
export function checkFat(fat: FatFacts): Issue[] {
  const refusals = [
    ...saponificationIssues(fat),
    ...profileIssues(fat),
    ...numberIssues(fat),
    ...limitIssues(fat),
  ];
  if (refusals.length > 0 || fat.confirmed === true) return refusals;
  return questionsAbout(fat);
}

function saponificationIssues(fat: FatFacts): Issue[] {
  const { low, used, high } = fat.saponificationMgKohPerG;
  if (low >= 20 && low <= used && used <= high && high <= 600) return [];
  return [
    {
      code: 'fat.saponification-disordered',
      path: ['saponificationMgKohPerG'],
      value: fat.saponificationMgKohPerG,
      accepted: { kind: 'range', low: 20, high: 600, unit: 'mg KOH/g' },
      title: fat.title,
      ...{ low, used, high },
      isAsNaoh: high < 20 && used > 0,
    },
  ];
}

/** How sheets name the acids that are written here by carbons and double bonds. */
const commonNames: Readonly<Record<string, string>> = {
  caprylic: 'C8:0',
  capric: 'C10:0',
  lauric: 'C12:0',
  myristic: 'C14:0',
  palmitic: 'C16:0',
  palmitoleic: 'C16:1',
  stearic: 'C18:0',
  oleic: 'C18:1',
  linoleic: 'C18:2',
  linolenic: 'C18:3',
  arachidic: 'C20:0',
  behenic: 'C22:0',
  erucic: 'C22:1',
};

/** The carbons and double bonds of an acid that a sheet calls by its name. */
function alsoCalled(name: string): string | undefined {
  const [word = ''] = name.toLowerCase().split(/[^a-z]/);
  return commonNames[word];
}

function profileIssues(fat: FatFacts): Issue[] {
  const entries = Object.entries(fat.fattyAcidsPercent);
  const unknown = entries.filter(([name, share]) => fattyAcidMolarMass(name) === undefined || !(share >= 0));
  const issues = unknown.map(([name, share]): Issue => {
    const isCalled = alsoCalled(name);
    return {
      code: 'fat.unknown-fatty-acid',
      path: ['fattyAcidsPercent', name],
      value: share,
      ...{ name, share },
      ...(isCalled !== undefined && { isCalled }),
    };
  });
  const sum = entries.reduce((total, [, share]) => total + share, 0);
  if (sum > PROFILE_CEILING) {
    issues.push({
      code: 'fat.fatty-acids-over-100',
      path: ['fattyAcidsPercent'],
      value: sum,
      accepted: { kind: 'range', low: 0, high: 100, unit: '%' },
      ...{ title: fat.title, sum },
    });
  }
  return issues;
}

/** What a liquid fat's numbers may be; wide, for this is where a slip of the point or the unit shows. */
const numbers = [
  {
    field: 'densityGPerMl',
    code: 'fat.density-out-of-range',
    low: 0.8,
    high: 1.1,
    unit: 'g/mL',
  },
  {
    field: 'expansionGPerMlPerC',
    code: 'fat.expansion-out-of-range',
    low: 0.0003,
    high: 0.0015,
    unit: 'g/mL per °C',
  },
] as const;

function numberIssues(fat: FatFacts): Issue[] {
  return numbers
    .filter(({ field, low, high }) => !(fat[field] >= low && fat[field] <= high))
    .map(({ field, code, low, high, unit }) => ({
      code,
      path: [field],
      value: fat[field],
      accepted: { kind: 'range', low, high, unit },
      ...{ title: fat.title, found: fat[field] },
    }));
}

const limits = [
  { field: 'iodine', code: 'fat.iodine-disordered', top: 250, unit: 'g/100 g' },
  {
    field: 'unsaponifiablePercent',
    code: 'fat.unsaponifiable-disordered',
    top: 60,
    unit: '%',
  },
] as const;

function limitIssues(fat: FatFacts): Issue[] {
  return limits.flatMap(({ field, code, top, unit }) => {
    const given = fat[field];
    if (given === undefined || (given.low >= 0 && given.low <= given.high && given.high <= top)) return [];
    return [
      {
        code,
        path: [field],
        value: given,
        accepted: { kind: 'range', low: 0, high: top, unit },
        ...{ title: fat.title, low: given.low, high: given.high },
      },
    ];
  });
}
