import type { BatchAmounts, Cover, PartAmounts, Risk } from '#contract';
import { fromBase } from '#units';
import type { Texts } from '#words';
import { columns, wrap } from './text-layout.js';
import { printed } from './words/index.js';

const WIDTH = 100;

/** What to weigh for each part of a run, how surely it reaches and where what is left over can go. */
export function amountsSection(amounts: readonly PartAmounts[], texts: Texts): string {
  const seen = new Seen();
  return [printed[texts.language].plan.amounts, ...amounts.map((part) => partText(part, texts, seen))].join(
    '\n',
  );
}

/** What was said of an earlier part and need only be pointed to. */
class Seen {
  readonly #titles = new Map<string, string>();

  /** Title of the part that said the same before; undefined the first time. */
  before(said: string, title: string): string | undefined {
    const before = this.#titles.get(said);
    if (before === undefined) this.#titles.set(said, title);
    return before;
  }
}

function partText(part: PartAmounts, texts: Texts, seen: Seen): string {
  const [urgent, other] = [
    part.risks.filter(({ level }) => level === 'high'),
    part.risks.filter(({ level }) => level !== 'high'),
  ];
  return [
    `  ${part.title}: ${madeText(part, texts)}`,
    ...urgent.map((risk) => riskText(risk, part, seen, texts)),
    ...(part.batch === undefined ? [] : batchText(part, part.batch, texts, seen)),
    coverText(part, texts),
    ...basisText(part, texts),
    ...other.map((risk) => riskText(risk, part, seen, texts)),
  ].join('\n');
}

/** Lye and its water: a tenth of a gram always, a hundredth where the batch is small. */
function lyeMassText(grams: number, texts: Texts): string {
  if (texts.system === 'us') return `${texts.number(fromBase(grams, 'oz'), 3)} oz`;
  return `${texts.number(grams, grams < 10 ? 2 : 1)} g`;
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

function batchText(part: PartAmounts, batch: BatchAmounts, texts: Texts, seen: Seen): string[] {
  const same = seen.before(JSON.stringify([part.told, batch]), part.title);
  if (same !== undefined) return [`    ${printed[texts.language].plan.sameAs(texts.quoted(same))}`];
  return [
    wrap(factsText(part, batch, texts), 4, WIDTH),
    ...columns(rowsOf(part, batch, texts).map(([name, value]) => [`      ${name}`, texts.mass(value)])),
    `    ${lyeText(batch, texts)}`,
    ...acidText(batch, texts),
    wrap(waterText(batch, texts), 6, WIDTH),
  ];
}

function factsText({ told }: PartAmounts, { fatsG, superfat }: BatchAmounts, texts: Texts): string {
  if (told === undefined) throw new Error('a batch without what its recipe says');
  const words = printed[texts.language].plan;
  const { superfatPercent, naohPurityPercent, kohSharePercent, kohPurityPercent, batterTemperatureC } = told;
  const oil = Math.abs(superfat.used - superfatPercent) > 0.05;
  const meant = words.superfat(texts.percent(superfatPercent));
  const lots = words.asLotsVary(texts.range(texts.number(superfat.low), texts.percent(superfat.high)));
  return [
    words.fats(texts.mass(fatsG)),
    `${oil ? `${meant}, ${words.withOil(texts.percent(superfat.used))}` : meant} (${lots})`,
    ...(kohSharePercent === 100 ? [] : [words.naohPurity(texts.percent(naohPurityPercent))]),
    ...(kohSharePercent === 0
      ? []
      : [words.kohShare(texts.percent(kohSharePercent), texts.percent(kohPurityPercent ?? 100))]),
    words.batterAt(texts.temperature(batterTemperatureC)),
  ].join(' · ');
}

function rowsOf(part: PartAmounts, batch: BatchAmounts, texts: Texts): [string, number][] {
  const { materials } = texts.names;
  const words = printed[texts.language].plan;
  const rows: [string, number][] = [
    ...batch.fats.map(({ fat, title, massG }): [string, number] => [texts.titled(fat, title), massG]),
    [materials['sodium-lactate'], batch.sodiumLactateG],
    [materials.salt, batch.saltG],
    [materials.sugar, batch.sugarG],
    ...batch.additions.map(({ title, massG }): [string, number] => [title, massG]),
    [part.fragrance ?? materials.fragrance, batch.fragranceG],
    ...batch.colourants.flatMap(({ title, massG, carrier }): [string, number][] => [
      [title, massG],
      ...(carrier === undefined
        ? []
        : [[`  ${words.stirredInto[carrier.kind]}`, carrier.massG] satisfies [string, number]]),
    ]),
  ];
  return rows.filter(([, value]) => value > 0);
}

function lyeText({ naohG, kohG, waterG }: BatchAmounts, texts: Texts): string {
  const alkalis = [
    ...(naohG > 0 ? [`NaOH ${lyeMassText(naohG, texts)}`] : []),
    ...(kohG > 0 ? [`KOH ${lyeMassText(kohG, texts)}`] : []),
  ];
  return printed[texts.language].plan.lye(texts.and(alkalis), lyeMassText(waterG, texts));
}

function acidText({ acids }: BatchAmounts, texts: Texts): string[] {
  if (acids.length === 0) return [];
  const names = acids.map(
    ({ key, title, massG }) => `${texts.titled(key, title)}: ${lyeMassText(massG, texts)}`,
  );
  return [wrap(`${names.join('; ')}. ${printed[texts.language].plan.acids}`, 4, WIDTH)];
}

function waterText({ water }: BatchAmounts, texts: Texts): string {
  const words = printed[texts.language].plan;
  const { lyeConcentrationPercent, waterPerLye, waterPercentOfFats, allWaterPercentOfFats } = water;
  const whole = (percent: number): string => texts.percent(Math.round(percent));
  const own = words.water(
    texts.percent(lyeConcentrationPercent),
    texts.number(waterPerLye, 2),
    whole(waterPercentOfFats),
  );
  const all = allWaterPercentOfFats - waterPercentOfFats > 0.5;
  return all ? `${own} ${words.allWater(whole(allWaterPercentOfFats))}` : own;
}

function riskText(risk: Risk, part: PartAmounts, seen: Seen, texts: Texts): string {
  const text = texts.of(risk);
  const before = seen.before(JSON.stringify(risk), part.title);
  return wrap(
    before === undefined
      ? `! ${text} ${texts.remedyOf(risk)}`
      : `! ${printed[texts.language].plan.asFor(texts.quoted(before), text)}`,
    4,
    WIDTH,
    2,
  );
}
