import type { ClockInput } from '#contract';
import { clockUnits } from '#contract/names';
import type { Names } from '../names.js';
import type { Amounts } from './amounts.js';

/** How what the clocks read is written: `28 %`, `29 °C`, `120 mL`, `9 h`, `lined wood`. */
export function readsWith(
  { choices }: Names,
  amounts: Amounts,
): (input: ClockInput, value: number | string) => string {
  const words: Readonly<Record<string, Readonly<Record<string, string>>>> = choices;
  return (input, value) => {
    if (typeof value === 'string') return words[input]?.[value] ?? value;
    switch (clockUnits[input]) {
      case '°C':
        return amounts.temperature(value);
      case 'mL':
        return amounts.volume(value);
      case 'mm':
        return amounts.length(value);
      case 'h':
        return `${amounts.number(value, 0)} h`;
      default:
        return amounts.percent(value);
    }
  };
}

/** The name of a shipped fat or a material with a key of its own; a title that somebody gave stays as it is. */
export function titledWith({ materials, englishMaterials }: Names): (key: string, title: string) => string {
  const [own, shipped] = [materials, englishMaterials] as readonly Readonly<Record<string, string>>[];
  return (key, title) => (shipped?.[key] === title ? own?.[key] : undefined) ?? title;
}

/** How well a figure is known, with its source as the language cites it. @param inDegrees sets temperatures in the reader's unit */
export function evidenceWith(
  { sources, evidence: told }: Names,
  inDegrees: (text: string) => string,
): Names['evidence'] {
  return (evidence) => {
    const { source } = evidence;
    return told(
      source === undefined ? evidence : { ...evidence, source: inDegrees(sources[source] ?? source) },
    );
  };
}
