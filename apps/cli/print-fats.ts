import { naohPerKoh, shippedFats } from '#chemistry';
import type { Texts } from '#words';
import { columns } from './text-layout.js';
import { printed } from './words/index.js';

/** The fats that need no entry of their own: what a recipe calls them, the NaOH a gram takes, and how well that is known. */
export function printFats(texts: Texts): string {
  const rows = shippedFats.map(({ key, title, saponificationMgKohPerG: sv, evidence }) => [
    key,
    texts.titled(key, title),
    naohPerGram(sv.used, texts),
    texts.range(naohPerGram(sv.low, texts), naohPerGram(sv.high, texts)),
    texts.names.evidence(evidence.saponification),
  ]);
  return `${columns([printed[texts.language].sheet.fats, ...rows]).join('\n')}\n`;
}

/** Grams of NaOH for a gram of fat, to a tenth of a milligram. */
function naohPerGram(mgKohPerGram: number, texts: Texts): string {
  return texts.number((mgKohPerGram * naohPerKoh) / 1000, 4).padEnd(6, '0');
}
