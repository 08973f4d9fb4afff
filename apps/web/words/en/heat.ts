/** What the pages say of the heat of a poured part, besides the sentences of its messages. */
export const heat = {
  title: 'Heat after the pour',
  lead: 'Soap warms itself as it forms. This is for what is cast in one cavity.',
  needsMould: 'Choose a mould for the batch, and its heat is shown here.',
  sameAs: (part: string) => `It warms as “${part}” does.`,
  picture: (title: string) => `${title}: temperature of its middle and its edge, from the pour on`,
  legend: {
    middle: 'middle',
    edge: 'edge',
    hottest: 'hottest, 8 in 10',
    gel: (from: string) => `gel from ${from}`,
    around: {
      room: (degrees: string) => `room, ${degrees}`,
      chilled: (degrees: string) => `refrigerator, ${degrees}`,
    },
  },
  table: 'The curve as a table',
  columns: { after: 'After the pour', middle: 'Middle', edge: 'Edge' },
  ways: 'If the mould stood otherwise',
  wayColumns: {
    kept: 'It stands',
    whole: 'Gels wholly',
    part: 'In its middle only',
    none: 'Does not gel',
    overheats: 'Overheats',
  },
  asItIs: '(as it is)',
  keptLabel: 'How the mould stands after the pour',
  keptHint: 'It decides how warm the soap gets.',
  kept: { open: 'open', covered: 'covered', wrapped: 'wrapped in towels', chilled: 'in the refrigerator' },
  usual: (kept: string) => `as usual for it: ${kept}`,
};
