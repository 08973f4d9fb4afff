import type { AmountsDocument, GatherLine, GatherList, PieceCost } from '#contract';
import type { Texts } from '#words';
import { amountsSection, piecesText } from './print-amounts.js';
import { groupsSection } from './print-groups.js';
import { labelsSection } from './print-labels.js';
import { cautionsSection, columns, heading, wrap } from './text-layout.js';
import { printed } from './words/index.js';

/** A batch sheet as text: amounts of each run, what to gather and buy for all, what a piece costs, cautions. */
export function printSheet(sheet: AmountsDocument, texts: Texts): string {
  const cautions = sheet.runs.flatMap((run) => [
    ...run.cautions,
    ...[...run.batches, ...run.amounts].flatMap((each) => each.cautions),
  ]);
  const sections = [
    ...sheet.runs.flatMap((run) => [
      heading(`${run.title} · ${printed[texts.language].plan.pieces(texts.number(run.count))}`),
      groupsSection(run, run.amounts, texts),
      amountsSection(run, texts),
      labelsSection(run.labels, texts),
      costSection(run.cost, texts),
    ]),
    gatherSection(sheet.gather, texts),
    cautionsSection(cautions, texts),
  ];
  return `${sections.filter((section) => section !== '').join('\n\n')}\n`;
}

function costSection(cost: PieceCost, texts: Texts): string {
  const words = printed[texts.language].sheet;
  const { currency, perPiece, work, materials, drivers, unpriced, handsOnMinPerPiece, complete } = cost;
  if (drivers.length === 0) return words.noPrices;
  const money = (amount: number): string => texts.money(amount, currency);
  const worked = words.work(texts.number(handsOnMinPerPiece), work > 0 ? money(work) : '');
  const total = complete ? money(perPiece) : words.atLeast(money(perPiece));
  return [
    words.cost(total, money(materials), worked),
    ...(cost.groups ?? []).map(
      (each) => `  ${words.ofGroup(texts.quoted(each.title), money(each.perPiece))}`,
    ),
    ...columns(drivers.map((d) => [`  ${texts.of(d.what)}`, money(d.perPiece), texts.share(d.share)])),
    ...(unpriced.length === 0 ? [] : [wrap(words.unpriced(unpriced.map(texts.of).join(', ')), 2, 100)]),
  ].join('\n');
}

function gatherSection(gather: GatherList, texts: Texts): string {
  const words = printed[texts.language].sheet;
  if (gather.lines.length === 0) return words.nothingToGather;
  const title = gather.runs.length === 1 ? words.gather : words.gatherFor(texts.number(gather.runs.length));
  const rows = gather.lines.map((line) => [
    `  ${texts.titled(line.key, line.title)}`,
    shown(line, line.needed, texts),
    line.onHand === 0 ? '—' : shown(line, line.onHand, texts),
    buyText(line, texts),
    line.price === undefined ? '' : texts.money(line.price, gather.currency),
  ]);
  const total =
    gather.price === undefined ? [] : [`  ${words.total(texts.money(gather.price, gather.currency))}`];
  const [head = '', ...lines] = columns([[title, words.needed, words.onHand, words.buy, ''], ...rows]);
  const told = lines.flatMap((text, i) => [
    text,
    ...(gather.lines[i]?.cautions ?? []).map((caution) => wrap(`! ${texts.of(caution)}`, 4, 100, 2)),
  ]);
  const unused = gather.unused.length === 0 ? [] : [wrap(words.unused(gather.unused.join(', ')), 2, 100)];
  return [head, ...told, ...total, ...unused].join('\n');
}

function buyText(line: GatherLine, texts: Texts): string {
  if (line.toBuy === 0) return printed[texts.language].sheet.nothing;
  // What is bought must reach: rounded up to what is shown.
  if (line.packs.length === 0) return shown(line, roundedUp(line.toBuy), texts);
  return line.packs
    .map((pack) => `${texts.number(pack.count)} × ${shown(line, pack.size, texts)}`)
    .join(' + ');
}

function shown(line: GatherLine, amount: number, texts: Texts): string {
  return line.unit === 'g' ? texts.mass(amount) : piecesText(amount, texts);
}

function roundedUp(amount: number): number {
  return amount < 100 ? Math.ceil(amount * 10 - 1e-6) / 10 : Math.ceil(amount - 1e-6);
}
