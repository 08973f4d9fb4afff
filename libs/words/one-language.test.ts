import { describe, expect, it } from 'vitest';
import type { Message, Risk } from '#contract';
import type { Issue } from '#units';
import { textsFor, type Language } from '#words';
import { en } from '#words/en';
import { wordsOf } from '#words/all';
import { messageSamples } from '../../tests/support/message-samples.js';
import { foreignIn, type Wanted } from '../../tests/support/one-language.js';

const messages = messageSamples();

function said(language: Language, units: 'metric' | 'us'): string[] {
  const texts = textsFor({ language, units, timeZone: 'Europe/Dublin' }, wordsOf[language]);
  const lines = messages.flatMap((message) => [
    `${message.code}: ${texts.of(message)}`,
    ...(isRisk(message) ? [`remedy of ${message.code}: ${texts.remedyOf(message)}`] : []),
  ]);
  return [...new Set(lines)];
}

function isRisk(message: Message): message is Risk {
  return Object.hasOwn(en.riskRemedies, message.code);
}

/** Finds of each line, after its code. */
function wrong(lines: readonly string[], wanted: Wanted): string[] {
  return lines.flatMap((line) => {
    const colon = line.indexOf(': ');
    return foreignIn(line.slice(colon + 2), wanted).map((find) => `${line.slice(0, colon)}: ${find}`);
  });
}
const systems = ['metric', 'us'] as const;

/** What the sentences of issues ask for, by its name; every issue gets all of it. */
const told = {
  ...{
    path: ['fats'],
    value: 33,
    accepted: { kind: 'range', low: 20, high: 50, unit: 'g' },
    rule: 'one-wish',
  },
  ...{
    nearest: ['Xx'],
    fat: 'Xx',
    title: 'Xx',
    name: 'Xx',
    field: 'Xx',
    stage: 'Xx',
    mould: 'Xx',
    key: 'xx',
  },
  ...{
    known: ['Xx'],
    missing: ['Xx'],
    way: ['Xx', 'Yy', 'Xx'],
    fields: ['Xx'],
    states: ['firm'],
    state: 'firm',
  },
  ...{ sum: 90, found: 33, unit: 'g', percent: 60, low: 180, used: 190, high: 200, most: 150, share: 12 },
  ...{
    expected: 192.5,
    asKoh: 189.9,
    shipped: 190,
    differsByPercent: 6,
    waterG: 20,
    lyeG: 30,
    ...{ liquid: 'Xx', addedTo: 'lye', broughtG: 40, askedG: 30, missingG: 5 },
    fatsG: 900,
    problem: 'missing',
    lyePercent: 40,
    stockPercent: 33,
    part: 'Xx',
    recipe: 'Xx',
    ofColours: true,
    acid: 'citric-acid',
  },
  ...{
    foundMm: 30,
    tubeMm: 30,
    outerMm: 40,
    ...{ holdsMl: 70, statedMl: 100 },
    filledMl: 75,
    batterC: 20,
    roomC: 34,
    isCalled: 'C18:1',
  },
  ...{
    massG: 900,
    mostG: 800,
    leastG: 500,
    ...{ title: 'Xx', leftG: 70 },
    days: 3,
    count: 2,
    stages: 400,
    alkali: 'naoh',
    dimension: 'mass',
  },
  ...{
    input: 'saltPercent',
    inputs: ['saltPercent', 'sugarPercent'],
    readyBy: '2027-01-16',
    day: '2027-01-16',
  },
  titles: ['Xx', 'Yy'],
  ...{ startAfter: '2026-11-27T18:00', startedAt: '2026-11-27T18:00:00Z', at: '2026-11-27T17:00:00Z' },
  ...{
    afterMin: 900,
    leastMin: 30,
    mostMin: 600,
    pieces: 6,
    expectedEachG: 90,
    usedG: 900,
    expectedG: 90,
    made: 4,
  },
  ...{ of: 'run', mostMb: 40, side: 5000 },
  ...{
    because: { code: 'log.already-done', path: [], title: 'Xx' },
    isAsNaoh: false,
    isExcessIntended: false,
  },
};

/** What may stand in any field; issues of later checks speak of numbers. */
const values = [undefined, 'Xx', true, ['Xx'], null].map((value) => ({ value }));

/** One other value at a time, as what an issue needs may be one or many, of this kind or that, or not be there. */
const otherwise: readonly object[] = [
  ...[1, 7].map((pieces) => ({
    pieces,
    count: pieces,
    days: pieces,
    stages: pieces,
    made: pieces,
    share: pieces,
  })),
  ...(['%', 'mL', 'mm', 'cm²', '°C', 'min', 'characters', 'entries', 'pieces', 'pixels'] as const).flatMap(
    (unit) => [
      { unit, accepted: { kind: 'range', low: 1, high: 5, unit } },
      { unit, accepted: { kind: 'range', low: 1, unit } },
      { unit, accepted: { kind: 'range', high: 5, unit } },
      { unit, accepted: { kind: 'range', low: 0, isOpen: true, unit } },
    ],
  ),
  ...(['mass', 'volume', 'length', 'temperature'] as const).flatMap((dimension) => [
    { dimension, accepted: { kind: 'measure', dimension } },
    { accepted: { kind: 'range', low: 1, high: 5, orMeasure: dimension } },
  ]),
  ...Object.keys(en.accepted.forms).map((form) => ({ accepted: { kind: 'form', form } })),
  ...(['until', 'since'] as const).map((kind) => ({ accepted: { kind, at: '2026-11-27T18:00:00Z' } })),
  { accepted: { kind: 'one-of', values: ['Xx', 'Yy'] } },
  ...[[], ['hours', 'weekly', 'friday', 0, 'from']].map((path) => ({ path })),
  { accepted: undefined },
  { of: 'workshop' },
  { alkali: 'koh', acid: 'lactic-acid', isCalled: undefined, stage: undefined, nearest: [], known: [] },
  { isAsNaoh: true, isExcessIntended: true, ofColours: false, found: -6 },
  ...['twice', 'mixed'].map((problem) => ({ problem })),
];

function saidOfIssues(language: Language, units: 'metric' | 'us'): string[] {
  const texts = textsFor({ language, units, timeZone: 'Europe/Dublin' }, wordsOf[language]);
  const lines = Object.keys(en.issues).flatMap((code) =>
    [{}, ...otherwise, ...(code.startsWith('input.') ? values : [])].map(
      (other) => `${code}: ${texts.issue({ ...told, ...other, code } as unknown as Issue)}`,
    ),
  );
  return [...new Set(lines)];
}

describe.each(['en', 'de'] as const)('in %s', (language) => {
  it.each(systems)('every issue is whole, and in one language and %s units', (units) => {
    expect(wrong(saidOfIssues(language, units), { language, units })).toEqual([]);
  });
  it.each(systems)('every message is whole, and in one language and %s units', (units) => {
    expect(wrong(said(language, units), { language, units })).toEqual([]);
  });
});

it('makes up every message of the contract, in several forms', () => {
  expect([...new Set(messages.map(({ code }) => code))].sort()).toEqual(Object.keys(en.messages).sort());
  expect(messages.length).toBeGreaterThan(1000);
});
