import type { BatchAmounts, BatchToMix, PartAmounts } from '#contract';
import { fromBase } from '#units';
import type { Texts } from '#words';
import type { Seen } from './seen.js';
import { columns, wrap } from './text-layout.js';
import { printed } from './words/index.js';

const WIDTH = 100;

/** What to weigh for a batch: fats and what goes in with them, lye, acids, water. @param title under which it stands */
export function batchText(title: string, batch: BatchToMix, texts: Texts, seen: Seen): string[] {
  const { amounts, told } = batch;
  const same = seen.before(JSON.stringify([told, amounts]), title);
  if (same !== undefined) return [`    ${printed[texts.language].plan.sameAs(texts.quoted(same))}`];
  return [
    wrap(factsText(batch, texts), 4, WIDTH),
    ...columns(rowsOf(batch, texts).map(([name, value]) => [`      ${name}`, texts.mass(value)])),
    wrap(lyeText(amounts, texts), 4, WIDTH),
    ...acidText(amounts, texts),
    ...liquidText(amounts, texts),
    wrap(waterText(amounts, texts), 6, WIDTH),
    ...allergenText(amounts, texts),
  ];
}

function factsText({ told, amounts }: BatchToMix, texts: Texts): string {
  const { fatsG, superfat } = amounts;
  const words = printed[texts.language].plan;
  const { superfatPercent, naohPurityPercent, kohSharePercent, kohPurityPercent, batterTemperatureC } = told;
  const oil = Math.abs(superfat.used - superfatPercent) > 0.05;
  const meant = words.superfat(texts.percent(superfatPercent));
  const lots = words.asLotsVary(texts.range(texts.number(superfat.low), texts.percent(superfat.high)));
  return [
    words.fats(texts.mass(fatsG)),
    `${oil ? `${meant}, ${words.withOil(texts.percent(superfat.used))}` : meant} (${lots})`,
    ...(kohSharePercent === 100 || amounts.stock !== undefined
      ? []
      : [words.naohPurity(texts.percent(naohPurityPercent))]),
    ...(kohSharePercent === 0
      ? []
      : [words.kohShare(texts.percent(kohSharePercent), texts.percent(kohPurityPercent ?? 100))]),
    words.batterAt(texts.temperature(batterTemperatureC)),
  ].join(' · ');
}

function rowsOf({ amounts: batch }: BatchToMix, texts: Texts): [string, number][] {
  const { titled } = texts;
  const rows: [string, number][] = [
    ...batch.fats.map(({ fat, title, massG }): [string, number] => [titled(fat, title), massG]),
    [titled('sodium-lactate', 'Sodium lactate, 60% solution'), batch.sodiumLactateG],
    [titled('salt', 'Salt'), batch.saltG],
    [titled('sugar', 'Sugar'), batch.sugarG],
    ...batch.additions.map(({ title, massG }): [string, number] => [title, massG]),
    ...batch.fragrances.map(({ title, massG }): [string, number] => [title, massG]),
    ...batch.colourants.flatMap((colour) => colourRows(colour, texts)),
  ];
  return rows.filter(([, value]) => value > 0);
}

function colourRows(
  { title, massG, carrier }: BatchAmounts['colourants'][number],
  texts: Texts,
): [string, number][] {
  const { stirredInto } = printed[texts.language].plan;
  return [
    [title, massG],
    ...(carrier === undefined
      ? []
      : [[`  ${stirredInto[carrier.kind]}`, carrier.massG] satisfies [string, number]]),
  ];
}

/** What is taken off a batch once it is mixed, with the colours that go into it. @param amounts of its parts, where they are several */
export function splitText({ portions }: BatchToMix, amounts: readonly PartAmounts[], texts: Texts): string[] {
  const rows = portions.flatMap((portion) => {
    const own: [string, number][] = [
      ...portion.colourants.flatMap((colour) => colourRows(colour, texts)),
      ...[...portion.additions, ...portion.fragrances].map(({ title, massG }): [string, number] => [
        title,
        massG,
      ]),
    ];
    const of = amounts.length > 0 && portion.portion !== undefined;
    const name = of ? `${titleOf(amounts, portion.part)}: ${portion.title}` : portion.title;
    return [
      [`      ${name}`, texts.mass(portion.massG), texts.percent(Math.round(portion.sharePercent))],
      ...own.map(([title, massG]) => [
        `        ${title.startsWith(' ') ? title : `+ ${title}`}`,
        texts.mass(massG),
      ]),
    ];
  });
  return [`    ${printed[texts.language].plan.splitInto}`, ...columns(rows)];
}

/** What a part is called. */
export function titleOf(amounts: readonly PartAmounts[], key: string): string {
  return amounts.find(({ part }) => part === key)?.title ?? key;
}

/** Lye and its water: a tenth of a gram always, a hundredth where the batch is small. */
function lyeMassText(grams: number, texts: Texts): string {
  if (texts.system === 'us') return `${texts.number(fromBase(grams, 'oz'), 3)} oz`;
  return `${texts.number(grams, grams < 10 ? 2 : 1)} g`;
}

function lyeText({ naohG, kohG, waterG, stock, liquids = [] }: BatchAmounts, texts: Texts): string {
  const words = printed[texts.language].plan;
  const soda =
    stock === undefined
      ? `NaOH ${lyeMassText(naohG, texts)}`
      : words.stock(texts.percent(stock.percent), lyeMassText(stock.massG, texts));
  const alkalis = [...(naohG > 0 ? [soda] : []), ...(kohG > 0 ? [`KOH ${lyeMassText(kohG, texts)}`] : [])];
  const plainG = stock?.waterG ?? waterG;
  const inLye = liquids.filter(({ addedTo }) => addedTo === 'lye');
  const into = [
    // Less than scales show is left by the rounding of shares that come to all of the liquid.
    ...(plainG > 0.005 || inLye.length === 0 ? [words.plainWater(lyeMassText(plainG, texts))] : []),
    ...inLye.map(({ key, title, massG }) => `${texts.titled(key, title)} ${lyeMassText(massG, texts)}`),
  ];
  return words.lye(texts.and(alkalis), texts.and(into));
}

function liquidText({ liquids = [] }: BatchAmounts, texts: Texts): string[] {
  const { intoBatter, liquidsHold } = printed[texts.language].plan;
  const inBatter = liquids
    .filter(({ addedTo }) => addedTo === 'batter')
    .map(({ key, title, massG }) => `${texts.titled(key, title)} ${lyeMassText(massG, texts)}`);
  const total = (what: 'fatG' | 'sugarG'): string =>
    texts.mass(liquids.reduce((sum, each) => sum + each[what], 0));
  return [
    ...(inBatter.length === 0 ? [] : [wrap(intoBatter(texts.and(inBatter)), 4, WIDTH)]),
    ...(liquids.length === 0 ? [] : [`      ${liquidsHold(total('fatG'), total('sugarG'))}`]),
  ];
}

function acidText({ acids }: BatchAmounts, texts: Texts): string[] {
  if (acids.length === 0) return [];
  const names = acids.map(
    ({ key, title, massG }) => `${texts.titled(key, title)}: ${lyeMassText(massG, texts)}`,
  );
  return [wrap(`${names.join('; ')}. ${printed[texts.language].plan.acids}`, 4, WIDTH)];
}

function allergenText({ fragrances, allergens }: BatchAmounts, texts: Texts): string[] {
  const words = printed[texts.language].plan;
  const unknown = fragrances.filter(({ hasAllergens, massG }) => !hasAllergens && massG > 0);
  const named = allergens.map(({ name, percent }) => `${name} ${texts.percent(percent, 2)}`);
  const told = [
    ...(named.length === 0 ? [] : [words.allergens(texts.and(named))]),
    ...(unknown.length === 0
      ? []
      : [words.allergensUnknown(texts.and(unknown.map(({ title }) => texts.quoted(title))))]),
  ];
  return told.length === 0 ? [] : [wrap(told.join(' '), 4, WIDTH)];
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
