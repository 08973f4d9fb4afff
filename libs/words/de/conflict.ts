import type { ConflictReason, Loss, ResourceReference, StageReference } from '#contract';
import { bearerWithin, named, untilOf } from '../named.js';
import type { MessageWords, Texts } from '../words.js';

export const conflictReasons: MessageWords<ConflictReason> = {
  'conflict.after': ({ stage, after }, texts) => `${named(stage, texts)} kommt nach ${named(after, texts)}.`,
  'conflict.at-least': ({ stage, after, minutes }, texts) =>
    `${named(stage, texts)} beginnt frühestens ${texts.duration(minutes)} nach ${named(after, texts)}.`,
  'conflict.at-most': ({ stage, after, minutes }, texts) =>
    `${named(stage, texts)} beginnt spätestens ${texts.duration(minutes)} nach ${named(after, texts)}.`,
  'conflict.made': ({ stage, part }, texts) =>
    `${named(stage, texts)} kommt, wenn ${named(part, texts)} gemacht ist.`,
  'conflict.opens': ({ stage, part, state, band }, texts) => {
    const { is, after } = texts.names.states[state];
    return `${named(stage, texts)} wartet, bis ${bearerWithin(part, state, texts)} ${is} ist: ${texts.band(band)} ${after}.`;
  },
  'conflict.closes': ({ stage, part, state, band }, texts) => {
    const { after } = texts.names.states[state];
    return (
      `${named(stage, texts)} geht nur, solange ${bearerWithin(part, state, texts)} ${untilOf(state, texts)} ist: ` +
      `bis ${texts.band(band)} ${after}.`
    );
  },
  'conflict.cures': ({ part, band }, texts) => `${named(part, texts)} reift ${texts.band(band)}.`,
  'conflict.hours': ({ stage, minutes }, texts) =>
    `${named(stage, texts)} dauert ${texts.duration(minutes)} am Stück und muss in Ihre Zeiten passen.`,
  'conflict.earliest': ({ stage, at }, texts) =>
    `${named(stage, texts)} darf nicht vor ${texts.dayTime(at)} beginnen.`,
  'conflict.start': ({ stage, at }, texts) => `${named(stage, texts)} soll ${texts.dayTime(at)} beginnen.`,
  'conflict.ready-by': ({ stage, day }, texts) =>
    `${named(stage, texts)} muss bis ${texts.calendarDay(day)} reif sein.`,
  'conflict.done': ({ stage, at }, texts) => `${named(stage, texts)} hat ${texts.dayTime(at)} begonnen.`,
  'conflict.shared': ({ resource, owned, stages }, texts) =>
    `${ownedText(resource, owned, texts)}; für ${listed(stages, texts)} zugleich reicht das nicht.`,
  'conflict.order': ({ resource, stages }, texts) => {
    const what = resource.kind === 'hands' ? 'gehen Ihre Hände' : `geht ${texts.quoted(resource.title)}`;
    return `In diesem Plan ${what} von ${stages.map((stage) => named(stage, texts)).join(' zu ')}.`;
  },
  'conflict.too-few': ({ stage, resource, needed, owned }, texts) =>
    `${named(stage, texts)} braucht ${amountOf(resource, needed, texts)} zugleich; ` +
    `da ${owned === 1 ? 'ist' : 'sind'} ${texts.number(owned)}. ` +
    'Machen Sie weniger Stücke oder zwei Läufe nacheinander.',
  'conflict.horizon': ({ days }, texts) =>
    `Pläne reichen ${texts.number(days, 0)} Tage voraus, nicht weiter.`,
  'conflict.input': ({ value }, texts) =>
    `Woraus dieser Lauf gemacht wird, passt nicht mehr zusammen${value === null ? '' : `: ${texts.quoted(value)}`}. ` +
    'Prüfen Sie Formen, Geräte und Rezepte.',
};

export const losses: MessageWords<Loss> = {
  'loss.closed': ({ stage, part, state, at }, texts) => {
    const when = at === null ? `Wenn ${named(stage, texts)} an der Reihe ist` : `Bis ${texts.dayTime(at)}`;
    const rest = `${bearerWithin(part, state, texts)} vielleicht nicht mehr ${untilOf(state, texts).replace(/^noch /, '')}.`;
    return at === null ? `${when}, ist ${rest}` : `${when} ist ${rest}`;
  },
  'loss.at-most': ({ stage, after, minutes }, texts) =>
    `${named(stage, texts)} muss vielleicht später beginnen als ${texts.duration(minutes)} nach ${named(after, texts)}.`,
  'loss.hours': ({ stage }, texts) => `${named(stage, texts)} passt vielleicht nicht mehr in Ihre Zeiten.`,
  'loss.ready-by': ({ stage, day }, texts) =>
    `${named(stage, texts)} ist bis ${texts.calendarDay(day)} vielleicht nicht reif.`,
  'loss.shared': ({ stage, resource }, texts) =>
    resource.kind === 'hands'
      ? `Vielleicht haben Sie noch zu tun, wenn ${named(stage, texts)} an der Reihe ist.`
      : `${texts.quoted(resource.title)} ist vielleicht noch belegt, wenn ${named(stage, texts)} an der Reihe ist.`,
  'loss.batter': ({ part, minutes, leaves }, texts) =>
    `Der Leim von ${named(part, texts)} lässt ${texts.band(leaves)} Zeit; alle Stücke brauchen ${texts.duration(minutes)}.`,
  'loss.other': ({ stage }, texts) => `${named(stage, texts)} kommt vielleicht zu spät.`,
};

function ownedText(resource: ResourceReference, owned: number, texts: Texts): string {
  if (resource.kind === 'hands')
    return owned === 1 ? 'Sie haben zwei Hände' : `Sie sind zu ${germanCount(owned, texts)}`;
  return `Sie haben ${amountOf(resource, owned, texts)}`;
}

/** „zu zweit“, sonst mit der Zahl. */
function germanCount(count: number, texts: Texts): string {
  return count === 2 ? 'zweit' : count === 3 ? 'dritt' : `${texts.number(count)}t`;
}

/** `24 Mulden von „Sechseck“`, `2-mal „Tablett“`. */
export function amountOf(resource: ResourceReference, count: number, texts: Texts): string {
  if (resource.kind === 'hands') return count === 1 ? 'eine Person' : `${texts.number(count)} Personen`;
  const title = texts.quoted(resource.title);
  if (resource.kind === 'equipment') return `${texts.number(count)}-mal ${title}`;
  return `${texts.number(count)} ${count === 1 ? 'Mulde' : 'Mulden'} von ${title}`;
}

function listed(stages: readonly StageReference[], texts: Texts): string {
  return texts.and(stages.map((stage) => named(stage, texts)));
}
