import { en } from '#words/en';

/** What the sentences of issues ask for, by its name; every issue gets all of it. */
export const issueSample = {
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
export const issueValues = [undefined, 'Xx', true, ['Xx'], null].map((value) => ({ value }));

/** One other value at a time, as what an issue needs may be one or many, of this kind or that, or not be there. */
export const issueVariants: readonly object[] = [
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
