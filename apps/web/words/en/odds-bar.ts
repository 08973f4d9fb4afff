/** Where the odds go, as a bar. Fetched with it. */
export const oddsBar = {
  of: 'Of 100 runs like this one',
  sound: (count: number, hasDay: boolean) => `${count} sound${hasDay ? ' by the day' : ''}`,
  late: (count: number) => `${count} sound, but late`,
  lost: (count: number) => `${count} lost`,
};

export type OddsBarWords = typeof oddsBar;
