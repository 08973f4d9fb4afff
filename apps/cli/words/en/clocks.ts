/** What printed clocks and their rules say besides the sentences of their messages. */
export const clocks = {
  until: (state: string) => `${state} until`,
  now: (band: string) => `now ${band}`,
  sameAs: (part: string) => `The same clocks as ${part}.`,
  heat: {
    sameAs: (part: string) => `Its heat is that of ${part}.`,
    after: 'after the pour',
    middle: 'middle',
    edge: 'edge',
  },
  factors: (states: string, factors: string) => `${states}: ${factors}.`,
  atReference: 'as at the reference point',
  filling: (needed: string, stretch: string, chance: string, surely: string) =>
    `All pieces take ${needed}; the batter leaves ${stretch} for it. In time: ${chance}; ${surely} nine times in ten.`,
  split: (batches: string, chance: string) =>
    `${batches} batches would make every one of them ${chance} sure.`,
  moves: (state: string, moves: string) => `What moves ${state} most: ${moves}.`,
  cure: 'Cure',
  weighings: (weighings: string, mass: string, percent: string, days: string, range: string) =>
    `By ${weighings} weighings a piece will settle at ${mass}. It is cured once it loses less than ${percent} in a week: ${days} days after unmoulding (${range}).`,
  settled: 'It has stopped losing weight: it is cured.',
  taught: 'What your log has taught',
  anyRecipe: 'any recipe',
  asWide: (share: string) => `band ${share} as wide`,
  record: (of: string, inside: string, outside: string, unknown: string, expected: string) =>
    `Of the last ${of} forecasts, each as it stood before its batch, ${inside} came inside the band and ${outside} outside; of ${unknown} the looks cannot tell. ${expected} were expected inside.`,
  onlyDone: (pace: string, batches: string) =>
    `${pace}: you only logged when it was done (batches: ${batches}), never a look too early. The forecast stays as it was, and no plan asks for it sooner than you have ever done it. Log a look that is too early as “not yet”, and the forecast gets better.`,
  from: (entries: string) => `from ${entries}`,
  why: 'Why',
  states: 'States at the reference point',
  rules: 'Rules',
  log: 'log',
  actsOn: (what: string) => `Acts on ${what}.`,
};
