import type { Logged, PlanCause, PlanEffect } from '#contract';
import type { MessageWords, Texts } from '../words.js';

const happened = {
  seized: 'ist schlagartig fest geworden',
  riced: 'ist grießig geworden',
  separated: 'hat sich getrennt',
  cracked: 'hat Risse',
  holes: 'hat Löcher',
  'ran-short': 'hat nicht gereicht',
} as const;
const answered = {
  remake: 'noch einmal machen',
  'carry-on': 'damit weitermachen',
  'drop-part': 'weglassen',
} as const;
const saw = { 'not-yet': 'noch nicht', already: 'schon', 'just-now': 'gerade eben' } as const;

export const logged: MessageWords<Logged> = {
  'logged.done': ({ stage }, texts) => `${texts.quoted(stage.title)} ist erledigt.`,
  'logged.not-yet': ({ stage }, texts) =>
    `Noch nicht so weit für ${texts.quoted(stage.title)}: Es dauert länger als meist.`,
  'logged.seen': ({ part, state, saw: when }, texts) =>
    `${texts.quoted(part.title)} ist ${saw[when]} ${texts.names.states[state].is}.`,
  'logged.weighed': ({ part, pieces, usedG }, texts) =>
    `${piecesOf(pieces, texts)} ${pieces === 1 ? 'hat' : 'haben'} ${texts.mass(usedG)} von ${texts.quoted(part.title)} gebraucht. ` +
    'Ansätze werden jetzt damit bemessen.',
  'logged.weigh-in': ({ pieces, massG }, texts) =>
    `${piecesOf(pieces, texts)} ${pieces === 1 ? 'wiegt' : 'wiegen'} ${texts.mass(massG)}. Damit wird die Reife vorhergesagt.`,
  'logged.mishap': ({ part, mishap, response }, texts) =>
    `${texts.quoted(part.title)} ${happened[mishap]}: ${answered[response]}.`,
  'logged.left-out': ({ part }, texts) =>
    `${texts.quoted(part.title)} wird weggelassen, damit der Plan aufgeht. Schiefgegangen ist nichts.`,
  'logged.note': ({ stage }, texts) =>
    stage === undefined ? 'Notiz geschrieben.' : `Notiz zu ${texts.quoted(stage.title)} geschrieben.`,
  'logged.forget': () => 'Dieser Eintrag lehrt von jetzt an nichts mehr. Er bleibt im Protokoll.',
  'logged.take-back': () => 'Dieser Eintrag gilt als nie geschrieben.',
};

export const effects: MessageWords<PlanEffect> = {
  'effect.moves': ({ stay, ...moved }, texts) => {
    const parts = [
      counted(moved.added, 'kommt dazu', 'kommen dazu', texts),
      counted(moved.removed, 'entfällt', 'entfallen', texts),
      counted(moved.later, 'rückt nach hinten', 'rücken nach hinten', texts),
      counted(moved.earlier, 'rückt nach vorn', 'rücken nach vorn', texts),
    ].flat();
    const rest = counted(stay, 'bleibt, wo er war', 'bleiben, wo sie waren', texts).map(
      (text) => `; ${text}`,
    );
    return `Von den Schritten: ${parts.join(', ')}${rest.join('')}.`;
  },
  'effect.nothing-moves': () => 'Nichts verschiebt sich.',
  'effect.nothing-left': () => 'Es ist nichts mehr zu tun.',
  'effect.no-plan': () => 'Von hier an gibt es keinen Plan.',
  'effect.undecided': () => 'Es fand sich rechtzeitig kein Plan. Was offen ist, bleibt, wo es war.',
  'effect.only-lessons': () => 'Dieser Lauf bleibt abgebrochen. Nur was er lehrt, ist berichtigt.',
};

const changes: Readonly<Record<string, string>> = {
  recipe: 'ein anderes Rezept',
  start: 'ein anderer Beginn',
  hours: 'andere Zeiten',
  count: 'eine andere Stückzahl',
  split: 'zwei Läufe statt einem',
  cavities: 'mehr Mulden',
  'drop-parts': 'ein Teil weggelassen',
  'ready-by': 'ein anderer Tag',
  'plan-anew': 'neu geplant',
};

export const causes: MessageWords<PlanCause> = {
  'cause.first-plan': () => 'Erster Plan.',
  'cause.asked': () => 'Auf Ihren Wunsch.',
  'cause.change': ({ change }) => `Geändert: ${changes[change] ?? 'wie gewählt'}.`,
  'cause.logged': ({ what }, texts) => `Eingetragen: ${what === null ? 'etwas.' : texts.of(what)}`,
};

function piecesOf(count: number, texts: Texts): string {
  return `${texts.number(count)} ${count === 1 ? 'Stück' : 'Stücke'}`;
}

function counted(number: number, one: string, many: string, texts: Texts): string[] {
  return number === 0 ? [] : [`${texts.number(number)} ${number === 1 ? one : many}`];
}
