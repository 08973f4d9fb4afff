export const mishapKinds = ['seized', 'riced', 'separated', 'cracked', 'holes', 'ran-short'] as const;
export type MishapKind = (typeof mishapKinds)[number];

/** What to do about a mishap. */
export const mishapResponses = ['remake', 'carry-on', 'drop-part'] as const;
export type MishapResponse = (typeof mishapResponses)[number];

/**
 * What is usually done about a mishap when the maker does not choose.
 * Common practice, no source: a batch that seized or separated, or does not reach, is made again; riced batter,
 * cracks and holes are carried on with and patched.
 */
export const usualResponse: Readonly<Record<MishapKind, MishapResponse>> = {
  seized: 'remake',
  separated: 'remake',
  'ran-short': 'remake',
  riced: 'carry-on',
  cracked: 'carry-on',
  holes: 'carry-on',
};

/**
 * Of what was mixed at once, what is spoilt when the batter of one part goes wrong: what is still in the bowl, or, where lye
 * and fats have parted, what is poured too. Common practice, no source. Other mishaps are of a part alone.
 */
export const spoilsBatter: Readonly<Partial<Record<MishapKind, 'in-bowl' | 'all'>>> = {
  seized: 'in-bowl',
  riced: 'in-bowl',
  separated: 'all',
};
