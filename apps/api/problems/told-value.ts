/** Of a text or a name, as many characters are told as are needed to find it in what was sent. */
const MOST_CHARACTERS = 200;
/** A list or an object is told whole up to this many values in it, and this many levels. */
const MOST_VALUES = 60;
const MOST_LEVELS = 6;

/** A text that was sent, cut where it is longer than anyone needs to find it again. */
export function toldText(text: string, most = MOST_CHARACTERS): string {
  return text.length > most ? `${text.slice(0, most)}…` : text;
}

/**
 * A value that was sent, as a problem tells it: so much of it that it is found again. What is sent may be large, and be
 * refused at many places, and the answer must not grow with both.
 */
export function toldValue(value: unknown): unknown {
  if (typeof value === 'string') return toldText(value);
  if (value === null || typeof value !== 'object' || isSmall(value)) return value;
  const size = Array.isArray(value) ? value.length : Object.keys(value).length;
  return Array.isArray(value) ? `a list of ${String(size)} entries` : `an object with ${String(size)} fields`;
}

function isSmall(value: object): boolean {
  let room = MOST_VALUES;
  const fits = (each: unknown, levels: number): boolean => {
    room -= 1;
    if (typeof each === 'string') return each.length <= MOST_CHARACTERS && room >= 0;
    if (each === null || typeof each !== 'object') return room >= 0;
    const inner = Object.entries(each);
    if (levels === 0 || inner.length > room) return false;
    return inner.every(([name, one]) => name.length <= MOST_CHARACTERS && fits(one, levels - 1));
  };
  return fits(value, MOST_LEVELS);
}
