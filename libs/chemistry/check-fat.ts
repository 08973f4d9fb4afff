import type { Issue } from '#units';
import type { FatFacts } from './fat-facts.js';
import { fattyAcidMolarMass } from './molar-mass.js';

/** Rounding on a supplier's sheet may carry a profile this far over 100 %. */
const PROFILE_CEILING = 100.5;

/**
 * Whether a fat's figures can be those of a fat.
 * @returns issues, paths from the fat itself; none when it can be used:
 * `fat.saponification-disordered`, `fat.unknown-fatty-acid`, `fat.fatty-acids-over-100`, `fat.density-out-of-range`
 */
export function checkFat(fat: FatFacts): Issue[] {
  return [...saponificationIssues(fat), ...profileIssues(fat), ...densityIssues(fat)];
}

function saponificationIssues(fat: FatFacts): Issue[] {
  const { low, used, high } = fat.saponificationMgKohPerG;
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

function profileIssues(fat: FatFacts): Issue[] {
  const entries = Object.entries(fat.fattyAcidsPercent);
  const unknown = entries.filter(([name, share]) => fattyAcidMolarMass(name) === undefined || !(share >= 0));
  const issues = unknown.map(([name, share]): Issue => ({
    code: 'fat.unknown-fatty-acid',
    path: ['fattyAcidsPercent', name],
    message: `“${name}” with ${String(share)} % is not a share of a fatty acid; a name such as C18:1 or ricinoleic and 0 % or more are accepted.`,
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

function densityIssues(fat: FatFacts): Issue[] {
  if (fat.densityGPerMl >= 0.8 && fat.densityGPerMl <= 1.05) return [];
  return [
    {
      code: 'fat.density-out-of-range',
      path: ['densityGPerMl'],
      message: `“${fat.title}” has a density of ${String(fat.densityGPerMl)} g/mL; 0.8 to 1.05 are accepted.`,
      value: fat.densityGPerMl,
      accepted: '0.8 to 1.05 g/mL',
    },
  ];
}
