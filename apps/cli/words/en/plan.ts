/** What plans, remedies and batch sheets say besides the sentences of its messages. */
export const plan = {
  pieces: (count: string) => `${count} pieces`,
  group: (title: string, pieces: string, parts: string) => `${title}: ${pieces} with ${parts}`,
  leftOut: (parts: string) => `Not made, as no group has it: ${parts}`,
  forPieces: (title: string, pieces: string) => `${title}, ${pieces}`,
  forGroups: (title: string, groups: string, pieces: string) => `${title}, ${groups}: ${pieces}`,
  cured: (likely: string, high: string) =>
    likely === high
      ? `Cured: count on ${high}`
      : `Cured: likely ${likely}; count on ${high}, by when 9 in 10 such runs are`,
  opens: (title: string, likely: string, high: string) =>
    likely === high
      ? `${title}: count on ${high}`
      : `${title}: likely ${likely}; count on ${high}, by when 9 in 10 are ready`,
  tideTable: ['Tide table', 'opens', 'best', 'last call'],
  status: { done: 'done', spoilt: 'spoilt' },
  added: 'Added, as the design does not say it',
  comesAfter: (stage: string, after: string) => `${stage} comes after ${after}.`,
  doneWhile: (stage: string, part: string, state: string) => `${stage} is done while ${part} is ${state}.`,
  waitsUntil: (stage: string, part: string, state: string) => `${stage} waits until ${part} is ${state}.`,
  attempt: (title: string, attempt: string) => `${title} (attempt ${attempt})`,
  sittings: 'Sittings',
  until: (from: string, to: string) => `${from} to ${to}`,
  oddsByTheDay: (byTheDay: string, atAll: string, asPlanned: string) =>
    `Sound pieces by the day: ${byTheDay}. Sound at all: ${atAll}. All as planned, looks too: ${asPlanned}.`,
  odds: (sound: string, asPlanned: string) =>
    `Sound pieces: ${sound}. All as planned, looks too: ${asPlanned}.`,
  lost: (stage: string, odds: string) => `${stage}, lost ${odds}.`,
  curedInTime: 'cured in time',
  keeps: (tail: string) =>
    `This plan holds even if the soap is among the fastest or slowest ${tail}. Your hours and the bowl are not counted in that.`,
  breaks: (tail: string) =>
    `If the soap is among the fastest or slowest ${tail}, this plan may break, even with hours and a bowl to spare. These may then not all hold:`,
  undecided: 'No plan was found, and none was ruled out: the search ran out of steps.',
  noPlan: 'There is no plan. These cannot all hold:',
  noneEnough: 'No single one of these is enough to give way: more stands behind.',
  anyOne: 'Any one of these makes a plan possible:',
  latestStart: (day: string, odds: string) => `Cured by ${day} with odds of ${odds}`,
  remedies: 'Remedies',
  nothingWorse: 'Nothing becomes worse.',
  worse: (text: string) => `Worse: ${text}`,
  also: (text: string) => `Also: ${text}`,
  takeCare: 'Take care',
  amounts: 'Amounts',
  batter: (mass: string, volume: string) => `${mass} of batter, ${volume}`,
  base: (mass: string) => `${mass} of melt-and-pour base`,
  batchFor: (parts: string) => `One batch for ${parts}`,
  splitInto: 'Split it, before the colours, into:',
  fromBatch: 'From the batch above.',
  sameAs: (part: string) => `Weigh the same as for ${part}.`,
  short: (chance: string) => `Chance of running short: ${chance}.`,
  left: (likely: string, range: string, uses: string) => `Left over: likely ${likely} (${range})${uses}.`,
  allergens: (named: string) => `A label has to name: ${named} (of the dry soap).`,
  allergensUnknown: (fragrances: string) =>
    `Allergens of ${fragrances} are not entered: its supplier’s sheet names them.`,
  stock: (strength: string, amount: string) => `NaOH solution of ${strength} ${amount}`,
  reaches: (pieces: string, certainty: string) =>
    `Its recipe gives its size: it reaches for ${pieces} with ${certainty} certainty.`,
  surer: (certainty: string, amount: string) => `For ${certainty} make ${amount}.`,
  madeFor: (pieces: string, volume: string, range: string, basis: string) =>
    `Made for ${pieces} of ${volume}, mostly ${range} (${basis})`,
  stays: (mass: string) => `, and ${mass} that stays in bowl, bag and pipette`,
  asUsual: ' (as usual; nothing was entered)',
  fats: (mass: string) => `Fats ${mass}`,
  superfat: (percent: string) => `superfat ${percent}`,
  withOil: (percent: string) => `${percent} with fat that gets no lye`,
  asLotsVary: (range: string) => `${range} as lots vary`,
  kohShare: (share: string, purity: string) => `KOH ${share} of the alkali, ${purity} pure`,
  naohPurity: (purity: string) => `NaOH ${purity} pure`,
  batterAt: (temperature: string) => `batter at ${temperature}`,
  stirredInto: {
    fat: 'stirred into extra oil',
    water: 'stirred into extra water',
    glycerol: 'stirred into extra glycerol',
  },
  lye: (alkalis: string, into: string) =>
    `Lye: ${alkalis} into ${into}. Goggles, gloves; never water into lye.`,
  acids:
    'Stir it into the water or the fats before the lye, never onto strong lye: it spits. The lye above includes what it takes.',
  plainWater: (water: string) => `water ${water}`,
  intoBatter: (liquids: string) => `Into the batter: ${liquids}.`,
  liquidsHold: (fat: string, sugar: string) => `The liquids hold ${fat} of fat and ${sugar} of sugar.`,
  water: (percent: string, times: string, ofFats: string) =>
    `Lye of ${percent}; water ${times} times the lye, ${ofFats} of the fats.`,
  allWater: (ofFats: string) => `With what acids and colours bring: ${ofFats} of the fats.`,
};
