import type { MishapKind, MishapResponse } from '#contract';

/**
 * What is usually done about a mishap, and is therefore chosen at first. The same table as the planner's, which is
 * too much to carry into the page; a test holds the two together.
 */
export const usualResponse: Readonly<Record<MishapKind, MishapResponse>> = {
  seized: 'remake',
  separated: 'remake',
  'ran-short': 'remake',
  riced: 'carry-on',
  cracked: 'carry-on',
  holes: 'carry-on',
};

export const mishapKinds = Object.keys(usualResponse) as readonly MishapKind[];
export const mishapResponses: readonly MishapResponse[] = ['remake', 'carry-on', 'drop-part'];
