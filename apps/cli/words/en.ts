/** What a printed plan says besides the sentences of its messages. */
export const en = {
  pieces: (count: string) => `${count} pieces`,
  cured: (likely: string, low: string, high: string) => `Cured about ${likely} (${low} to ${high})`,
  tideTable: ['Tide table', 'opens', 'best', 'last call'],
  status: { done: 'done', spoilt: 'spoilt' },
  added: 'Added, as the design does not say it',
  comesAfter: (stage: string, after: string) => `${stage} comes after ${after}.`,
  waitsUntil: (stage: string, part: string, state: string) => `${stage} waits until ${part} is ${state}.`,
  attempt: (title: string, attempt: string) => `${title} (attempt ${attempt})`,
  sittings: 'Sittings',
  until: (from: string, to: string) => `${from} to ${to}`,
  odds: (odds: string, scenarios: string) =>
    `Odds that every window is met: ${odds} (${scenarios} scenarios)`,
  oddsOver: (percent: string) => `over ${percent}`,
  lost: (stage: string, odds: string) => `${stage}, lost ${odds}.`,
  curedInTime: 'cured in time',
  keeps: (percent: string) =>
    `Kept whatever the soap does within its ${percent} bands: yes, hours and bowl aside.`,
  breaks: (percent: string) =>
    `Kept whatever the soap does within its ${percent} bands: no, even with hours and bowl aside. These cannot all hold then:`,
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
  sameAs: (part: string) => `Weigh the same as for ${part}.`,
  asFor: (part: string, text: string) => `As for ${part}: ${text}`,
  short: (chance: string) => `Chance of running short: ${chance}.`,
  left: (likely: string, range: string, uses: string) => `Left over: likely ${likely} (${range})${uses}.`,
  surer: (certainty: string, amount: string) => `For ${certainty} make ${amount}.`,
  madeFor: (pieces: string, volume: string, range: string, basis: string) =>
    `Made for ${pieces} of ${volume}, mostly ${range} (${basis})`,
  stays: (mass: string) => `, and ${mass} that stays in bowl, bag and pipette`,
  asUsual: ' (as usual; nothing was entered)',
  fats: (mass: string) => `Fats ${mass}`,
  superfat: (percent: string) => `superfat ${percent}`,
  withOil: (percent: string) => `${percent} with the colours’ oil`,
  asLotsVary: (range: string) => `${range} as lots vary`,
  kohShare: (share: string, purity: string) => `KOH ${share} of the alkali, ${purity} pure`,
  naohPurity: (purity: string) => `NaOH ${purity} pure`,
  batterAt: (temperature: string) => `batter at ${temperature}`,
  stirredInto: {
    fat: 'stirred into extra oil',
    water: 'stirred into extra water',
    glycerol: 'stirred into extra glycerol',
  },
  lye: (alkalis: string, water: string) =>
    `Lye: ${alkalis} into water ${water}. Goggles, gloves; never water into lye.`,
  acids:
    'Stir it into the water or the fats before the lye, never onto strong lye: it spits. The lye above includes what it takes.',
  water: (percent: string, times: string, ofFats: string) =>
    `Lye of ${percent}; water ${times} times the lye, ${ofFats} of the fats.`,
  allWater: (ofFats: string) => `With what acids and colours bring: ${ofFats} of the fats.`,
};

export type PrintedWords = typeof en;
