import type { Caution, Message } from '#contract';
import type { Texts } from '#words';
import { printed } from './words/index.js';

/** Rows as lines with their cells under each other. */
export function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = rows.reduce<number[]>(
    (max, row) => row.map((cell, i) => Math.max(max[i] ?? 0, cell.length)),
    [],
  );
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

/** A text broken into lines of at most `width`, each indented; lines after the first by `hanging` more. */
export function wrap(text: string, indent: number, width: number, hanging = 0): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const room = width - indent - (lines.length === 0 ? 0 : hanging);
    if (line !== '' && line.length + word.length + 1 > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((l, i) => ' '.repeat(indent + (i === 0 ? 0 : hanging)) + l).join('\n');
}

/** Messages as sentences, one after the other. */
export function sentences(messages: readonly Message[], texts: Texts): string {
  return messages.map((each) => texts.of(each)).join(' ');
}

/** A line with a rule of its own length under it. */
export function heading(text: string): string {
  return `${text}\n${'─'.repeat(text.length)}`;
}

/** Each caution once, in full. */
export function cautionsSection(cautions: Iterable<Caution>, texts: Texts): string {
  const byCode = new Map([...cautions].map((caution) => [caution.code, texts.of(caution)]));
  if (byCode.size === 0) return '';
  return [
    printed[texts.language].plan.takeCare,
    ...[...byCode.values()].map((text) => wrap(text, 2, 100)),
  ].join('\n');
}
