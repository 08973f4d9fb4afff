import type { StateId } from './states.js';

/** What of a batch varies as one: a batch that is slow in one state of a pace is slow in all of them. */
export type Pace = 'cooling' | 'keeping' | 'batter' | 'early' | 'set' | 'glaze' | 'cure';

/**
 * The pace of every state. Common practice, no source: a batch that firms slowly also stays pliable for longer,
 * so these vary as one; what happens in the first hour tells little of that. Soda ash goes with the set: both
 * wait for the lye to be used up. What is put onto finished soap holds until that has dried, as the cure is a drying too.
 */
export const paceOf: Readonly<Record<StateId, Pace>> = {
  'lye-cool': 'cooling',
  'lye-keeps-until': 'keeping',
  'fats-cool': 'cooling',
  emulsion: 'batter',
  'light-trace': 'batter',
  'medium-trace': 'batter',
  'thick-trace': 'batter',
  stiff: 'batter',
  'spoonable-until': 'cooling',
  'holds-layer': 'early',
  skinned: 'early',
  'takes-decor-until': 'early',
  'bonds-until': 'early',
  'piping-skinned': 'early',
  'ash-safe': 'set',
  patchable: 'set',
  firm: 'set',
  'pliable-until': 'set',
  handled: 'set',
  cuttable: 'set',
  'cuttable-until': 'set',
  'coat-tacky-until': 'set',
  'coat-turnable': 'set',
  'piping-firm': 'set',
  'piping-turnable': 'set',
  'glaze-set': 'glaze',
  'glaze-turnable': 'glaze',
  'melt-firm': 'glaze',
  'takes-coat-until': 'cure',
  'takes-piping-until': 'cure',
  'takes-glaze-until': 'cure',
  'embeds-until': 'cure',
  usable: 'cure',
  cured: 'cure',
  best: 'cure',
};
