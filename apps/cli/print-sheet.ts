import type { AmountsDocument, GatherLine, GatherList, PieceCost } from '#contract';
import type { Texts } from '#words';
import { amountsSection, piecesText } from './print-amounts.js';
import { cautionsSection, columns, heading, percentText, wrap } from './text-layout.js';
import { printed } from './words/index.js';

/** A batch sheet as text: amounts of each run, what to gather and buy for all, what a piece costs, cautions. */
export function printSheet(sheet: AmountsDocument, texts: Texts): string {
  const cautions = sheet.runs.flatMap((run) => [...run.cautions, ...run.amounts.flatMap((a) => a.cautions)]);
  const sections = [
    ...sheet.runs.flatMap((run) => [
      heading(`${run.title} · ${printed[texts.language].pieces(texts.number(run.count))}`),
      amountsSection(run.amounts, texts),
      costSection(run.cost),
    ]),
    gatherSection(sheet.gather, texts),
    cautionsSection(cautions, texts),
  ];
  return `${sections.filter((section) => section !== '').join('\n\n')}\n`;
}

function costSection(cost: PieceCost): string {
  const { currency, perPiece, work, materials, drivers, unpriced, handsOnMinPerPiece, complete } = cost;
  if (drivers.length === 0) return 'Cost of a piece: no prices are known yet.';
  const least = complete ? '' : 'at least ';
  const paid = work > 0 ? ` ${money(work, currency)}` : '';
  const head =
    `Cost of a piece: ${least}${money(perPiece, currency)} (materials ${money(materials, currency)}, ` +
    `${handsOnMinPerPiece.toFixed(1)} min of work${paid})`;
  return [
    head,
    ...columns(drivers.map((d) => [`  ${d.title}`, money(d.perPiece, currency), percentText(d.share)])),
    ...(unpriced.length === 0 ? [] : [wrap(`Not in it, no price known: ${unpriced.join(', ')}.`, 2, 100)]),
  ].join('\n');
}

function gatherSection(gather: GatherList, texts: Texts): string {
  if (gather.lines.length === 0) return 'Gather: nothing more.';
  const title = gather.runs.length === 1 ? 'Gather' : `Gather for ${String(gather.runs.length)} runs`;
  const rows = gather.lines.map((line) => [
    `  ${texts.titled(line.key, line.title)}`,
    shown(line, line.needed, texts),
    line.onHand === 0 ? '—' : shown(line, line.onHand, texts),
    buyText(line, texts),
    line.price === undefined ? '' : money(line.price, gather.currency),
  ]);
  const total =
    gather.price === undefined ? [] : [`  All that has a price: ${money(gather.price, gather.currency)}`];
  const [head = '', ...lines] = columns([[title, 'needed', 'on hand', 'buy', ''], ...rows]);
  const told = lines.flatMap((text, i) => [
    text,
    ...(gather.lines[i]?.cautions ?? []).map((caution) => wrap(`! ${texts.of(caution)}`, 4, 100, 2)),
  ]);
  const unused =
    gather.unused.length === 0
      ? []
      : [wrap(`Materials that nothing here is called: ${gather.unused.join(', ')}.`, 2, 100)];
  return [head, ...told, ...total, ...unused].join('\n');
}

function buyText(line: GatherLine, texts: Texts): string {
  if (line.toBuy === 0) return 'nothing';
  // What is bought must reach: rounded up to what is shown.
  if (line.packs.length === 0) return shown(line, roundedUp(line.toBuy), texts);
  return line.packs.map((pack) => `${String(pack.count)} × ${shown(line, pack.size, texts)}`).join(' + ');
}

function shown(line: GatherLine, amount: number, texts: Texts): string {
  return line.unit === 'g' ? texts.mass(amount) : piecesText(amount, texts);
}

function roundedUp(amount: number): number {
  return amount < 100 ? Math.ceil(amount * 10 - 1e-6) / 10 : Math.ceil(amount - 1e-6);
}

/** Without a currency, prices are bare numbers of whatever the maker pays in. */
function money(amount: number, currency: string | undefined): string {
  if (currency === undefined) return amount.toFixed(2);
  return new Intl.NumberFormat('en', { style: 'currency', currency }).format(amount);
}
