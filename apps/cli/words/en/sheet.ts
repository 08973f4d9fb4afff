/** What a batch sheet says of costs and of what to gather. */
export const sheet = {
  labels: 'Ingredients for labels',
  labelsHow:
    'By mass, most first. A label has one of the two lists. Names in quotes are yours: ask the supplier for the INCI name.',
  asPutIn: 'As put in',
  asSoap: 'As soap',
  noPrices: 'Cost of a piece: no prices are known yet.',
  cost: (total: string, materials: string, work: string) =>
    `Cost of a piece: ${total} (materials ${materials}, ${work})`,
  atLeast: (sum: string) => `at least ${sum}`,
  work: (minutes: string, paid: string) => `${minutes} min of work${paid === '' ? '' : ` ${paid}`}`,
  ofGroup: (group: string, cost: string) => `A piece of ${group} costs ${cost}`,
  unpriced: (titles: string) => `Not in it, no price known: ${titles}.`,
  nothingToGather: 'Gather: nothing more.',
  gather: 'Gather',
  gatherFor: (runs: string) => `Gather for ${runs} runs`,
  needed: 'needed',
  onHand: 'on hand',
  buy: 'buy',
  nothing: 'nothing',
  total: (sum: string) => `All that has a price: ${sum}`,
  unused: (keys: string) => `Materials that nothing here is called: ${keys}.`,
  fats: ['fat', 'title', 'NaOH per g', 'lots', 'known from'],
};
