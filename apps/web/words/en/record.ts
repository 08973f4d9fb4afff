/** How past forecasts came true. Fetched with the lessons. */
export const record = {
  title: 'What the forecasts were worth',
  told: (all: number, inside: number, expected: string) =>
    all === 1
      ? `Your one forecast so far: ${inside} of 1 came inside its band.`
      : `Of your last ${all} forecasts, ${inside} came inside the band; ${expected} were expected.`,
  outside: (earlier: number, later: number) => `Earlier than the band: ${earlier}. Later: ${later}.`,
  unknown: (count: number) =>
    `Cannot tell: ${count}. Nobody looked before the soap was ready, or the looks were too far apart. So more may have come inside.`,
  how: (percent: string) =>
    `Each forecast is taken as it stood before its batch began, with what earlier batches had taught. Its band is to hold ${percent} of the times.`,
  marks: { inside: 'inside', earlier: 'earlier', later: 'later', unknown: 'cannot tell' },
};

export type RecordWords = typeof record;
