import { shownOnOneLine, type Accepted } from '#units';

/** Beyond this nobody reads a value that was entered. */
const LONGEST = 60;

/** What the writing of a value needs of the texts. */
interface Writers {
  readonly number: (value: number, digits?: number) => string;
  readonly quoted: (title: string) => string;
}

/** A value as it was entered, on one line; undefined for lists, groups and nothing. */
export function foundText(value: unknown, { number, quoted }: Writers): string | undefined {
  if (typeof value === 'number') return number(value, 6);
  if (typeof value === 'boolean') return String(value);
  return typeof value === 'string' ? quoted(shortened(shownOnOneLine(value))) : undefined;
}

function shortened(text: string): string {
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 3)}…` : text;
}

/** Whether a field that is empty asks for just what its name says, so that nothing need be added. */
export function goesWithoutSaying(accepted: Accepted | undefined): boolean {
  return accepted?.kind === 'form' && ['number', 'text', 'documented-form'].includes(accepted.form);
}
