import type { Names } from '../names.js';

const lye = 'after lye-in';
const lyeFor = (part: string): string => `the lye for ${part}`;
const made = 'after it was made';
const pour = 'after the end of the pour';
const dip = 'after the end of dipping';
const piping = 'after the end of piping';
const glaze = 'after the glaze was poured';
const unmoulding = 'after unmoulding';

export const states: Names['states'] = {
  'lye-cool': { of: lyeFor, is: 'cool enough to mix', after: made },
  'lye-keeps-until': { of: lyeFor, is: 'fit for use', after: made },
  'fats-cool': {
    of: (part) => `the melted fat for ${part}`,
    is: 'cool enough to mix',
    after: 'after melting',
  },
  emulsion: { is: 'a stable emulsion', after: lye },
  'light-trace': { is: 'at light trace', after: lye },
  'medium-trace': { is: 'at medium trace', until: 'thinner than medium trace', after: lye },
  'thick-trace': { is: 'at thick trace', until: 'thinner than thick trace', after: lye },
  stiff: { is: 'too stiff to work', until: 'soft enough to work', after: lye },
  'spoonable-until': { is: 'soft enough to spoon into moulds', after: 'after cooking' },
  'holds-layer': { is: 'ready to hold a second layer', after: pour },
  'bonds-until': { is: 'able to bond with a second layer', after: pour },
  'takes-decor-until': { is: 'soft enough on top to take decor', after: pour },
  skinned: { is: 'skinned over', until: 'free of a skin', after: pour },
  patchable: { is: 'pliable like dough', after: pour },
  firm: { is: 'firm enough to unmould', after: pour },
  'pliable-until': { is: 'soft enough to patch', after: pour },
  handled: { is: 'firm enough to handle without marks', after: pour },
  cuttable: { is: 'firm enough to cut', after: pour },
  'cuttable-until': { is: 'soft enough to cut cleanly', after: pour },
  'ash-safe': { is: 'safe from soda ash', after: pour },
  'coat-tacky-until': { is: 'tacky to the touch', after: dip },
  'coat-turnable': { is: 'firm enough to turn without marks', after: dip },
  'piping-skinned': { is: 'free of a skin', after: piping },
  'piping-firm': { is: 'firm enough to bear a glaze', after: piping },
  'piping-turnable': { is: 'firm enough to turn over on its piping', after: piping },
  'glaze-set': { is: 'set to the touch', after: glaze },
  'glaze-turnable': { is: 'hard enough to turn over', after: glaze },
  'melt-firm': { is: 'cool enough to unmould', after: pour },
  'takes-piping-until': { is: 'fresh enough to hold piping', after: unmoulding },
  'takes-coat-until': { is: 'fresh enough to bond with a coat', after: unmoulding },
  'takes-glaze-until': { is: 'fresh enough to hold a glaze', after: unmoulding },
  'embeds-until': { is: 'fresh enough to bond when set in', after: unmoulding },
  usable: { is: 'fit to use', after: unmoulding },
  cured: { is: 'cured', after: unmoulding },
  best: { is: 'at its best', after: unmoulding },
};
