import { fromBase, type Accepted, type AcceptedRange, type AcceptedUnit } from '#units';
import type { AcceptedWords } from '../accepted-words.js';
import type { Amounts } from './amounts.js';
import type { Lengths } from './lengths.js';

interface Writers extends Pick<
  Amounts,
  'mass' | 'volume' | 'length' | 'temperature' | 'percent' | 'number' | 'system'
> {
  readonly duration: Lengths['duration'];
  readonly range: (low: string, high: string) => string;
  readonly or: (items: readonly string[]) => string;
  readonly dayTime: (at: string) => string;
}

/** Writes what is accepted. */
export interface AcceptedTexts {
  /** What would be accepted: `20% to 50%`, `a date as YYYY-MM-DD`, `metric or us`. */
  readonly accepted: (accepted: Accepted) => string;
  /** A number in a unit of input, in the reader's units where they differ: `12.5 g`, `3 pieces`. */
  readonly inUnit: (value: number, unit: AcceptedUnit | undefined) => string;
}

export function acceptedWith(words: AcceptedWords, writers: Writers): AcceptedTexts {
  const inUnit = (value: number, unit: AcceptedUnit | undefined): string =>
    write(value, unit, words, writers);
  const rangeText = ({ low, high, isOpen = false, unit, orMeasure }: AcceptedRange): string => {
    const [least, most] = [low, high].map((bound) => (bound === undefined ? undefined : inUnit(bound, unit)));
    const wanted = boundsText(least, most, isOpen);
    return orMeasure === undefined ? wanted : writers.or([wanted, words.measures[orMeasure]]);
  };
  const boundsText = (least: string | undefined, most: string | undefined, isOpen: boolean): string => {
    if (least !== undefined && most !== undefined && !isOpen) return writers.range(least, most);
    const from = least === undefined ? [] : [isOpen ? words.moreThan(least) : words.atLeast(least)];
    const to =
      most === undefined ? [] : [isOpen && least === undefined ? words.lessThan(most) : words.atMost(most)];
    return [...from, ...to].join(', ');
  };
  return {
    inUnit,
    accepted: (accepted) => {
      switch (accepted.kind) {
        case 'range':
          return rangeText(accepted);
        case 'one-of':
          return writers.or(accepted.values);
        case 'form':
          return words.forms[accepted.form];
        case 'measure':
          return words.measures[accepted.dimension];
        case 'until':
          return words.until(writers.dayTime(accepted.at));
        case 'since':
          return words.since(writers.dayTime(accepted.at));
      }
    },
  };
}

function write(
  value: number,
  unit: AcceptedUnit | undefined,
  words: AcceptedWords,
  writers: Writers,
): string {
  switch (unit) {
    case undefined:
      return writers.number(value, 4);
    case '%':
      return percentText(value, writers);
    case 'g':
      return writers.mass(value);
    case 'mL':
      return writers.volume(value);
    case 'mm':
      return writers.length(value);
    case '°C':
      return writers.temperature(value);
    case 'h':
      return `${writers.number(value, 0)} h`;
    case 'min':
      return writers.duration(value);
    case 'cm²': {
      const sign = writers.system === 'us' ? 'in²' : 'cm²';
      return `${writers.number(fromBase(value, sign), 2)} ${sign}`;
    }
    case 'characters':
    case 'entries':
    case 'pieces':
      return words[unit](writers.number(value, 0), value === 1);
    case 'pixels':
      return words.pixels(writers.number(value, 0));
    // The figures of suppliers' sheets, which know no other units.
    case 'g/mL':
    case 'mg KOH/g':
    case 'g/100 g':
      return `${writers.number(value, unit === 'g/mL' ? 3 : 1)} ${unit}`;
    case 'g/mL per °C':
      return writers.number(value, 5);
  }
}

/** Per cent to the hundredth where tenths would hide a difference. */
function percentText(value: number, { percent }: Writers): string {
  const isFine = Math.abs(value * 10 - Math.round(value * 10)) > 1e-6;
  return percent(value, isFine ? 2 : 1);
}
