import type { Names } from '../names.js';

const lye = 'nach der Laugenzugabe';
const lyeFor = (part: string): string => `die Lauge für ${part}`;
const made = 'nach dem Anrühren';
const pour = 'nach dem Gießen';
const dip = 'nach dem Tauchen';
const piping = 'nach dem Aufspritzen';
const glaze = 'nach dem Übergießen';
const unmoulding = 'nach dem Ausformen';

export const states: Names['states'] = {
  'lye-cool': { of: lyeFor, is: 'kühl genug zum Verrühren', after: made },
  'lye-keeps-until': { of: lyeFor, is: 'noch brauchbar', after: made },
  'fats-cool': {
    of: (part) => `das geschmolzene Fett für ${part}`,
    is: 'kühl genug zum Verrühren',
    after: 'nach dem Schmelzen',
  },
  emulsion: { is: 'stabil emulgiert', after: lye },
  'light-trace': { is: 'leicht angedickt', after: lye },
  'medium-trace': { is: 'mittel angedickt', until: 'dünner als mittel angedickt', after: lye },
  'thick-trace': { is: 'stark angedickt', until: 'dünner als stark angedickt', after: lye },
  stiff: { is: 'zu fest zum Verarbeiten', until: 'weich genug zum Verarbeiten', after: lye },
  'spoonable-until': { is: 'noch weich genug zum Einfüllen', after: 'nach dem Kochen' },
  'holds-layer': { is: 'tragfähig für eine zweite Schicht', after: pour },
  'bonds-until': { is: 'noch bindefähig für eine zweite Schicht', after: pour },
  'takes-decor-until': { is: 'oben noch weich genug für Dekor', after: pour },
  skinned: { is: 'mit einer Haut überzogen', until: 'noch ohne Haut', after: pour },
  patchable: { is: 'knetbar wie Teig', after: pour },
  firm: { is: 'fest genug zum Ausformen', after: pour },
  'pliable-until': { is: 'weich genug zum Ausbessern', after: pour },
  handled: { is: 'so fest, dass sie ohne Druckstellen angefasst werden kann', after: pour },
  cuttable: { is: 'fest genug zum Schneiden', after: pour },
  'cuttable-until': { is: 'weich genug für einen sauberen Schnitt', after: pour },
  'ash-safe': { is: 'sicher vor Sodaasche', after: pour },
  'coat-tacky-until': { is: 'noch klebrig', after: dip },
  'coat-turnable': { is: 'fest genug zum Wenden ohne Druckstellen', after: dip },
  'piping-skinned': { is: 'noch ohne Haut', after: piping },
  'piping-firm': { is: 'fest genug für einen Guss', after: piping },
  'piping-turnable': { is: 'fest genug, um sie auf der Dekoration zu wenden', after: piping },
  'glaze-set': { is: 'berührungsfest', after: glaze },
  'glaze-turnable': { is: 'hart genug zum Wenden', after: glaze },
  'melt-firm': { is: 'kühl genug zum Ausformen', after: pour },
  'takes-piping-until': { is: 'noch frisch genug, um Aufgespritztes zu halten', after: unmoulding },
  'takes-coat-until': { is: 'noch frisch genug für einen Überzug', after: unmoulding },
  'takes-glaze-until': { is: 'noch frisch genug für einen Guss', after: unmoulding },
  'embeds-until': { is: 'frisch genug, um sich mit neuem Leim zu verbinden', after: unmoulding },
  usable: { is: 'benutzbar', after: unmoulding },
  cured: { is: 'reif', after: unmoulding },
  best: { is: 'am besten', after: unmoulding },
};
