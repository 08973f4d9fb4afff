import type { Issue } from '#units';
import type { FatFacts } from './fat-facts.js';
import { questionsAbout } from './questions-about.js';
import { fattyAcidMolarMass } from './molar-mass.js';

/** Rounding on a supplier's sheet may carry a profile this far over 100 %. */
const PROFILE_CEILING = 100.5;

const confirm = 'If the sheet really says so, `confirmed: true` accepts it.';

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
  return questionsAbout(fat).map((question) => ({ ...question, message: `${question.message} ${confirm}` }));
}

function saponificationIssues(fat: FatFacts): Issue[] {
  const { low, used, high } = fat.saponificationMgKohPerG;
  if (high < 20 && used > 0) {
    const message =
      `“${fat.title}” has a saponification value of ${String(used)}; accepted: 20 to 600 mg KOH per g. ` +
      'A figure such as 0.135 is g of NaOH per g: divided by 0.000713 it is mg of KOH.';
    return [
      {
        code: 'fat.saponification-disordered',
        path: ['saponificationMgKohPerG'],
        message,
        value: fat.saponificationMgKohPerG,
        accepted: '20 to 600 mg KOH per g',
      },
    ];
  }
  if (low >= 20 && low <= used && used <= high && high <= 600) return [];
  return [
    {
      code: 'fat.saponification-disordered',
      path: ['saponificationMgKohPerG'],
      message: `“${fat.title}” has the saponification values ${String(low)}, ${String(used)}, ${String(high)} mg KOH/g; they must rise from low over used to high, within 20 to 600.`,
      value: fat.saponificationMgKohPerG,
      accepted: '20 ≤ low ≤ used ≤ high ≤ 600 mg KOH/g',
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

function alsoCalled(name: string): string {
  const [word = ''] = name.toLowerCase().split(/[^a-z]/);
  const code = commonNames[word];
  return code === undefined ? '' : ` “${name}” is ${code}.`;
}

function profileIssues(fat: FatFacts): Issue[] {
  const entries = Object.entries(fat.fattyAcidsPercent);
  const unknown = entries.filter(([name, share]) => fattyAcidMolarMass(name) === undefined || !(share >= 0));
  const issues = unknown.map(([name, share]): Issue => ({
    code: 'fat.unknown-fatty-acid',
    path: ['fattyAcidsPercent', name],
    message: `“${name}” with ${String(share)} % is not a share of a fatty acid; a name such as C18:1 or ricinoleic and 0 % or more are accepted.${alsoCalled(name)}`,
    value: share,
    accepted: 'carbons:double bonds such as C18:1, or ricinoleic; 0 to 100 %',
  }));
  const sum = entries.reduce((total, [, share]) => total + share, 0);
  if (sum > PROFILE_CEILING) {
    issues.push({
      code: 'fat.fatty-acids-over-100',
      path: ['fattyAcidsPercent'],
      message: `The fatty acids of “${fat.title}” add up to ${sum.toFixed(1)} %; at most 100 % are accepted.`,
      value: sum,
      accepted: '100 % at most',
    });
  }
  return issues;
}

/** What a liquid fat's numbers may be; wide, for this is where a slip of the point or the unit shows. */
const numbers = [
  {
    field: 'densityGPerMl',
    code: 'fat.density-out-of-range',
    name: 'a density',
    low: 0.8,
    high: 1.05,
    unit: 'g/mL',
  },
  {
    field: 'expansionGPerMlPerC',
    code: 'fat.expansion-out-of-range',
    name: 'an expansion',
    low: 0.0003,
    high: 0.0015,
    unit: 'g/mL per °C',
  },
] as const;

function numberIssues(fat: FatFacts): Issue[] {
  return numbers
    .filter(({ field, low, high }) => !(fat[field] >= low && fat[field] <= high))
    .map(({ field, code, name, low, high, unit }) => ({
      code,
      path: [field],
      message: `“${fat.title}” has ${name} of ${String(fat[field])} ${unit}; ${String(low)} to ${String(high)} are accepted.`,
      value: fat[field],
      accepted: `${String(low)} to ${String(high)} ${unit}`,
    }));
}

const limits = [
  { field: 'iodine', code: 'fat.iodine-disordered', name: 'the iodine values', top: 250, unit: 'g/100 g' },
  {
    field: 'unsaponifiablePercent',
    code: 'fat.unsaponifiable-disordered',
    name: 'the unsaponifiable shares',
    top: 60,
    unit: '%',
  },
] as const;

function limitIssues(fat: FatFacts): Issue[] {
  return limits.flatMap(({ field, code, name, top, unit }) => {
    const given = fat[field];
    if (given === undefined || (given.low >= 0 && given.low <= given.high && given.high <= top)) return [];
    return [
      {
        code,
        path: [field],
        message: `“${fat.title}” has ${name} ${String(given.low)} and ${String(given.high)} ${unit}; they must rise from low to high, within 0 to ${String(top)}.`,
        value: given,
        accepted: `0 ≤ low ≤ high ≤ ${String(top)} ${unit}`,
      },
    ];
  });
}
