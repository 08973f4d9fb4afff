import type { BatchToMix, Cover, PartAmounts, RunPlan } from '#contract';
import type { Texts } from '#words';
import { batchText, splitText, titleOf } from './print-batch.js';
import { RiskPrinter, type AtRisk } from './print-risks.js';
import { Seen } from './seen.js';
import { wrap } from './text-layout.js';
import { printed } from './words/index.js';

const WIDTH = 100;

/** What to weigh for each batch, what of it each part of a run takes, how surely it reaches and where what is left over can go. */
export function amountsSection({ batches = [], amounts }: Made, texts: Texts): string {
  const made = amounts.flatMap((part): MadeThing[] => {
    const batch = batches.find(({ parts }) => parts.includes(part.part));
    const isFirst = batch?.parts[0] === part.part;
    const isShared = batch !== undefined && batch.parts.length > 1;
    const risks = [...(isShared ? [] : (batch?.risks ?? [])), ...part.risks];
    const own = isShared ? { from: batch.title } : { batch };
    return [
      ...(isShared && isFirst
        ? [{ batch, title: sharedTitle(batch, amounts, texts), risks: batch.risks }]
        : []),
      { part, ...own, title: texts.quoted(part.title), risks },
    ];
  });
  const telling = { texts, seen: new Seen(), printer: new RiskPrinter(made, texts) };
  const told = made.map((each) =>
    'part' in each ? partText(each, telling) : sharedText(each, amounts, telling),
  );
  return [printed[texts.language].plan.amounts, ...told].join('\n');
}

interface Telling {
  readonly texts: Texts;
  readonly seen: Seen;
  readonly printer: RiskPrinter;
}

interface SharedBatch extends AtRisk {
  readonly batch: BatchToMix;
}

interface MadePart extends AtRisk {
  readonly part: PartAmounts;
  /** Its batch, where that is for this part alone. */
  readonly batch?: BatchToMix | undefined;
  /** The title of a batch that it shares. */
  readonly from?: string;
}

type MadeThing = SharedBatch | MadePart;

function sharedTitle(batch: BatchToMix, amounts: readonly PartAmounts[], texts: Texts): string {
  const parts = batch.parts.map((key) => texts.quoted(titleOf(amounts, key)));
  return printed[texts.language].plan.batchFor(texts.and(parts));
}

type Made = Pick<RunPlan, 'batches' | 'amounts'>;

/** A batch that several parts are poured from, before them. */
function sharedText(
  shared: SharedBatch,
  amounts: readonly PartAmounts[],
  { texts, seen, printer }: Telling,
): string {
  const { batch, title } = shared;
  const words = printed[texts.language].plan;
  const { batchG, batchMl } = batch.amounts;
  return [
    `  ${title}: ${words.batter(texts.mass(batchG), texts.volume(batchMl))}`,
    ...printer.lines(shared, 'high'),
    ...batchText(batch.title, batch, texts, seen),
    ...splitText(batch, amounts, texts),
    ...printer.lines(shared, 'other'),
  ].join('\n');
}

function partText(made: MadePart, { texts, seen, printer }: Telling): string {
  const { part, batch, from } = made;
  return [
    `  ${part.title}: ${madeText(part, texts)}`,
    ...printer.lines(made, 'high'),
    ...(from === undefined ? [] : [`    ${printed[texts.language].plan.fromBatch}`]),
    ...(batch === undefined ? [] : ownBatchText(part, batch, texts, seen)),
    coverText(part, texts),
    ...basisText(part, texts),
    ...printer.lines(made, 'other'),
  ].join('\n');
}

/** One colour goes in with all the rest; several come when the batter is split. */
function ownBatchText(part: PartAmounts, batch: BatchToMix, texts: Texts, seen: Seen): string[] {
  if (batch.portions.length > 1) {
    return [...batchText(part.title, batch, texts, seen), ...splitText(batch, [], texts)];
  }
  return batchText(part.title, { ...batch, amounts: part.batch ?? batch.amounts }, texts, seen);
}

function madeText(part: PartAmounts, texts: Texts): string {
  const words = printed[texts.language].plan;
  const mass = part.massG === undefined ? '' : texts.mass(part.massG);
  if (part.batch !== undefined) {
    return words.batter(texts.mass(part.batch.batchG), texts.volume(part.batch.batchMl));
  }
  if (part.kind === 'melt-and-pour') return words.base(mass);
  const pieces = piecesText(part.pieces ?? 0, texts);
  return mass === '' ? pieces : `${pieces}, ${mass}`;
}

/** A whole number of pieces. */
export function piecesText(value: number, texts: Texts): string {
  return texts.pieces(texts.number(value, 0), Math.round(value) === 1);
}

function coverText({ cover }: PartAmounts, texts: Texts): string {
  const words = printed[texts.language].plan;
  const amount = (value: number): string =>
    cover.unit === 'g' ? texts.mass(value) : piecesText(value, texts);
  const { low, likely, high } = cover.leftover;
  const uses = cover.leftoverUses.length === 0 ? '' : `: ${texts.or(cover.leftoverUses.map(texts.of))}`;
  const reached = cover.reaches.find(({ certainty }) => certainty === cover.wantedCertainty);
  const told = [
    ...(cover.given === true && reached !== undefined
      ? [words.reaches(piecesText(reached.pieces, texts), texts.share(reached.certainty))]
      : []),
    words.short(texts.share(cover.shortageChance)),
    words.left(amount(likely), texts.range(amount(low), amount(high)), uses),
    ...surerTexts(cover, amount, texts),
  ];
  return wrap(told.join(' '), 4, WIDTH);
}

function surerTexts(
  { sizes, wantedCertainty }: Cover,
  amount: (value: number) => string,
  texts: Texts,
): string[] {
  const next = sizes.find(({ certainty }) => certainty > wantedCertainty);
  return next === undefined
    ? []
    : [printed[texts.language].plan.surer(texts.share(next.certainty), amount(next.amount))];
}

function basisText(part: PartAmounts, texts: Texts): string[] {
  const words = printed[texts.language].plan;
  const { perPiece, lossG = 0, lossFrom, count } = part;
  if (perPiece === undefined) return [];
  // Nine pieces of ten lie within 1.6 standard deviations.
  const spread = (perPiece.meanMl * perPiece.spreadPercent * 1.645) / 100;
  const basis = [perPiece.from, ...(perPiece.learned === undefined ? [] : [perPiece.learned])].map(texts.of);
  const range = texts.range(
    texts.volume(Math.max(0, perPiece.meanMl - spread)),
    texts.volume(perPiece.meanMl + spread),
  );
  const made = words.madeFor(
    piecesText(count, texts),
    texts.volume(perPiece.meanMl),
    range,
    texts.and(basis),
  );
  const usual = lossFrom === 'usual' ? words.asUsual : '';
  const stays = lossG > 0 ? `${words.stays(texts.mass(lossG))}${usual}` : '';
  return [wrap(`${made}${stays}.`, 4, WIDTH)];
}
