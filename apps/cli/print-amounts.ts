import type { BatchAmounts, Cover, PartAmounts, Risk } from '#contract';
import { showMeasure, type UnitSystem } from '#units';
import type { Texts } from '#words';
import { columns, percentText, wrap } from './text-layout.js';

const WIDTH = 100;
/** From here on kitchen scales show no fraction of an ounce that means anything. */
const GRAMS_BELOW_OZ = 28.35;

/** What to weigh for each part of a run, how surely it reaches and where what is left over can go. */
export function amountsSection(amounts: readonly PartAmounts[], texts: Texts): string {
  const seen = new Seen();
  return ['Amounts', ...amounts.map((part) => partText(part, texts, seen))].join('\n');
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
  const units = texts.system;
  const [urgent, other] = [
    part.risks.filter(({ level }) => level === 'high'),
    part.risks.filter(({ level }) => level !== 'high'),
  ];
  return [
    `  ${part.title}: ${madeText(part, units)}`,
    ...urgent.map((risk) => riskText(risk, part, seen, texts)),
    ...(part.batch === undefined ? [] : batchText(part, part.batch, texts, seen)),
    coverText(part, texts),
    ...basisText(part, texts),
    ...other.map((risk) => riskText(risk, part, seen, texts)),
  ].join('\n');
}

/** A mass as the scales show it. */
function massText(grams: number, units: UnitSystem): string {
  const text = showMeasure(grams, 'mass', units);
  return units === 'us' && grams < GRAMS_BELOW_OZ
    ? `${text} (${showMeasure(grams, 'mass', 'metric')})`
    : text;
}

/** Lye and its water: a tenth of a gram always, a hundredth where the batch is small. */
function lyeMassText(grams: number, units: UnitSystem): string {
  const metric = showMeasure(grams, 'mass', 'metric', grams < 10 ? 2 : 1);
  return units === 'us' ? `${showMeasure(grams, 'mass', 'us', 3)} (${metric})` : metric;
}

function madeText(part: PartAmounts, units: UnitSystem): string {
  const mass = part.massG === undefined ? '' : massText(part.massG, units);
  if (part.batch !== undefined) {
    const { batchG, batchMl } = part.batch;
    return `${massText(batchG, units)} of batter, ${showMeasure(batchMl, 'volume', units)}`;
  }
  if (part.kind === 'melt-and-pour') return `${mass} of melt-and-pour base`;
  const from = part.material === undefined ? '' : ` of ${part.material.replaceAll('-', ' ')}`;
  return `${piecesText(part.pieces ?? 0)}${mass === '' ? '' : `, ${mass}${from}`}`;
}

/** A whole number of pieces. */
export function piecesText(value: number): string {
  const whole = value.toFixed(0);
  return whole === '1' ? '1 piece' : `${whole} pieces`;
}

function coverText({ cover }: PartAmounts, texts: Texts): string {
  const units = texts.system;
  const amount = (value: number): string => (cover.unit === 'g' ? massText(value, units) : piecesText(value));
  const { low, likely, high } = cover.leftover;
  const uses = cover.leftoverUses.length === 0 ? '' : `: ${texts.or(cover.leftoverUses.map(texts.of))}`;
  return wrap(
    `Chance of running short ${percentText(cover.shortageChance)}. ` +
      `Left over: likely ${amount(likely)} (${amount(low)} to ${amount(high)})${uses}.${surerText(cover, amount)}`,
    4,
    WIDTH,
  );
}

function surerText({ sizes, wantedCertainty }: Cover, amount: (value: number) => string): string {
  const [next] = sizes.filter(({ certainty }) => certainty > wantedCertainty);
  return next === undefined ? '' : ` For ${percentText(next.certainty)} make ${amount(next.amount)}.`;
}

function basisText(part: PartAmounts, texts: Texts): string[] {
  const units = texts.system;
  const { perPiece, lossG = 0, lossFrom, count } = part;
  if (perPiece === undefined) return [];
  const volume = (value: number): string => showMeasure(value, 'volume', units);
  // Nine pieces of ten lie within 1.6 standard deviations.
  const spread = (perPiece.meanMl * perPiece.spreadPercent * 1.645) / 100;
  const basis = [perPiece.from, ...(perPiece.learned === undefined ? [] : [perPiece.learned])].map(texts.of);
  const usual = lossFrom === 'usual' ? ' (as usual; nothing was told)' : '';
  const text =
    `Made for ${piecesText(count)} of ${volume(perPiece.meanMl)}, mostly ${volume(Math.max(0, perPiece.meanMl - spread))} to ` +
    `${volume(perPiece.meanMl + spread)} (${texts.and(basis)})` +
    (lossG > 0 ? `, and ${massText(lossG, units)} that stays in bowl, bag and pipette${usual}` : '');
  return [wrap(`${text}.`, 4, WIDTH)];
}

function batchText(part: PartAmounts, batch: BatchAmounts, texts: Texts, seen: Seen): string[] {
  const units = texts.system;
  const same = seen.before(JSON.stringify([part.told, batch]), part.title);
  if (same !== undefined) return [`    Weigh the same as for “${same}”.`];
  const mass = (value: number): string => massText(value, units);
  return [
    wrap(factsText(part, batch, units), 4, WIDTH),
    ...columns(rowsOf(part, batch, texts).map(([name, value]) => [`      ${name}`, mass(value)])),
    `    ${lyeText(batch, units)}`,
    ...acidText(batch, texts),
    wrap(waterText(batch), 6, WIDTH),
  ];
}

function factsText({ told }: PartAmounts, { fatsG, superfat }: BatchAmounts, units: UnitSystem): string {
  if (told === undefined) throw new Error('a batch without what its recipe says');
  const { superfatPercent, naohPurityPercent, kohSharePercent, kohPurityPercent, batterTemperatureC } = told;
  const koh =
    kohSharePercent === 0
      ? ''
      : ` · KOH ${String(kohSharePercent)} % of the alkali, ${String(kohPurityPercent ?? 100)} % pure`;
  const naoh = kohSharePercent === 100 ? '' : ` · NaOH ${String(naohPurityPercent)} % pure`;
  const oil =
    Math.abs(superfat.used - superfatPercent) > 0.05
      ? `, ${superfat.used.toFixed(1)} % with the colours’ oil`
      : '';
  return (
    `Fats ${massText(fatsG, units)} · superfat ${String(superfatPercent)} %${oil} (${superfat.low.toFixed(1)} to ` +
    `${superfat.high.toFixed(1)} % as lots vary)${naoh}${koh} · batter at ${showMeasure(batterTemperatureC, 'temperature', units, 0)}`
  );
}

function rowsOf(part: PartAmounts, batch: BatchAmounts, texts: Texts): [string, number][] {
  const { materials } = texts.names;
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
        : [[`  stirred into extra ${carrierName[carrier.kind]}`, carrier.massG] satisfies [string, number]]),
    ]),
  ];
  return rows.filter(([, value]) => value > 0);
}

const carrierName = { fat: 'oil', water: 'water', glycerol: 'glycerol' } as const;

function lyeText({ naohG, kohG, waterG }: BatchAmounts, units: UnitSystem): string {
  const alkalis = [
    ...(naohG > 0 ? [`NaOH ${lyeMassText(naohG, units)}`] : []),
    ...(kohG > 0 ? [`KOH ${lyeMassText(kohG, units)}`] : []),
  ];
  return (
    `Lye: ${alkalis.join(' and ')} into water ${lyeMassText(waterG, units)}. ` +
    'Goggles, gloves; never water into lye.'
  );
}

function acidText({ acids }: BatchAmounts, texts: Texts): string[] {
  if (acids.length === 0) return [];
  const names = acids.map(
    ({ key, title, massG }) => `${texts.titled(key, title)}: ${lyeMassText(massG, texts.system)}`,
  );
  return [
    wrap(
      `${names.join('; ')}. Stir it into the water or the fats before the lye, never onto strong lye: it spits. ` +
        'The lye above includes what it takes.',
      4,
      WIDTH,
    ),
  ];
}

function waterText({ water }: BatchAmounts): string {
  const { lyeConcentrationPercent, waterPerLye, waterPercentOfFats, allWaterPercentOfFats } = water;
  const all =
    allWaterPercentOfFats - waterPercentOfFats > 0.5
      ? ` With what acids and colours bring: ${allWaterPercentOfFats.toFixed(0)} % of the fats.`
      : '';
  return (
    `Lye of ${lyeConcentrationPercent.toFixed(1)} %; water ${waterPerLye.toFixed(2)} times the lye, ` +
    `${waterPercentOfFats.toFixed(0)} % of the fats.${all}`
  );
}

function riskText(risk: Risk, part: PartAmounts, seen: Seen, texts: Texts): string {
  const text = texts.of(risk);
  const before = seen.before(JSON.stringify(risk), part.title);
  return wrap(
    before === undefined ? `! ${text} ${texts.remedyOf(risk)}` : `! As for “${before}”: ${text}`,
    4,
    WIDTH,
    2,
  );
}
