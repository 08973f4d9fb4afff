/**
 * Characters that steer a terminal or turn text around without being seen: the control characters C0 and C1 (Unicode
 * Standard 17.0, section 23.1) but tab and line breaks, and the embeddings, overrides and isolates of the
 * bidirectional algorithm (UAX #9, section 2). Marks that languages written from right to left need in a line of text
 * (U+200E, U+200F, U+061C) are not among them, nor are joiners, which emoji are made with.
 */
const STEERING = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]/g;

/** Line breaks of every kind, and tabs. */
const BREAKS = /[\t\n\r\u2028\u2029]+/g;

/** The text without characters that steer what shows it. Line breaks and tabs stay. */
export function withoutSteering(text: string): string {
  return text.replace(STEERING, '');
}

/** The text on one line, without characters that steer what shows it. */
export function onOneLine(text: string): string {
  return withoutSteering(text.replace(BREAKS, ' '));
}

/**
 * The text with characters that steer what shows it written as `\u202e`, so that they are seen and do nothing. Inside a
 * JSON string that is the same character. Line feeds stay, as lines are made of them.
 */
export function shownText(text: string): string {
  return text.replace(STEERING, spelled).replace(/[\t\r\u2028\u2029]/g, spelled);
}

/** The same for a text that has to stay on its line. */
export function shownOnOneLine(text: string): string {
  return shownText(text).replace(/\n/g, spelled);
}

function spelled(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}
