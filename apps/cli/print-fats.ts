import { naohPerKoh, shippedFats } from '#chemistry';
import type { Texts } from '#words';
import { columns } from './text-layout.js';

/** The fats that need no entry of their own: what a recipe calls them, the NaOH a gram takes, and how well that is known. */
export function printFats(texts: Texts): string {
  const rows = shippedFats.map(({ key, title, saponificationMgKohPerG: sv, evidence }) => [
    key,
    texts.titled(key, title),
    ((sv.used * naohPerKoh) / 1000).toFixed(4),
    `${((sv.low * naohPerKoh) / 1000).toFixed(4)} to ${((sv.high * naohPerKoh) / 1000).toFixed(4)}`,
    texts.names.evidence(evidence.saponification),
  ]);
  const head = ['fat', 'title', 'NaOH per g', 'lots', 'known from'];
  return `${columns([head, ...rows]).join('\n')}\n`;
}
