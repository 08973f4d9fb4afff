import type { BatchAmounts, Cover, PartAmounts } from '#contract';
import { showMeasure, type UnitSystem } from '#units';
import { columns, percentText, wrap } from './text-layout.js';

const WIDTH = 100;

/** What to weigh for each part of a run, how surely it reaches and where what is left over can go. */
export function amountsSection(amounts: readonly PartAmounts[], units: UnitSystem): string {
  const seen = new Map<string, string>();
  return ['Amounts', ...amounts.map((part) => partText(part, units, seen))].join('\n');
}

function partText(part: PartAmounts, units: UnitSystem, seen: Map<string, string>): string {
  return [
    `  ${part.title}: ${madeText(part, units)}`,
    ...basisText(part, units),
    ...coverText(part, units),
    ...(part.batch === undefined ? [] : batchText(part, part.batch, units)),
    ...risksText(part, seen),
  ].join('\n');
}

function madeText(part: PartAmounts, units: UnitSystem): string {
  const mass = part.massG === undefined ? '' : showMeasure(part.massG, 'mass', units);
  if (part.batch !== undefined) {
    const { batchG, batchMl } = part.batch;
    return `${showMeasure(batchG, 'mass', units)} of batter, ${showMeasure(batchMl, 'volume', units)}`;
  }
  if (part.kind === 'melt-and-pour') return `${mass} of melt-and-pour base`;
  const from = part.material === undefined ? '' : ` of ${part.material}`;
  return `${piecesText(part.pieces ?? 0)}${mass === '' ? '' : `, ${mass}${from}`}`;
}

/** A whole number of pieces. */
export function piecesText(value: number): string {
  const whole = value.toFixed(0);
  return whole === '1' ? '1 piece' : `${whole} pieces`;
}

function basisText(part: PartAmounts, units: UnitSystem): string[] {
  const { perPiece, lossG = 0, count } = part;
  if (perPiece === undefined) return [];
  const text =
    `${piecesText(count)} of ${showMeasure(perPiece.meanMl, 'volume', units)} (${perPiece.from}; ` +
    `± ${perPiece.spreadPercent.toFixed(0)} % from piece to piece, ± ${perPiece.averageErrorPercent.toFixed(0)} % all together)` +
    (lossG > 0 ? `, and ${showMeasure(lossG, 'mass', units)} that stays in bowl, bag and pipette` : '');
  return [wrap(text, 4, WIDTH)];
}

function coverText({ cover }: PartAmounts, units: UnitSystem): string[] {
  const amount = (value: number): string =>
    cover.unit === 'g' ? showMeasure(value, 'mass', units) : piecesText(value);
  const { low, likely, high } = cover.leftover;
  const uses = cover.leftoverUses.length === 0 ? '' : `; ${cover.leftoverUses.join(', or ')}`;
  return [
    wrap(
      `Chance of running short ${percentText(cover.shortageChance)}. ` +
        `Left over: likely ${amount(likely)} (${amount(low)} to ${amount(high)})${uses}.`,
      4,
      WIDTH,
    ),
    wrap(`${reachesText(cover)} To be surer: ${surerText(cover, amount)}.`, 4, WIDTH),
  ];
}

function reachesText({ reaches, wantedCertainty }: Cover): string {
  const told = reaches.filter(({ certainty }) => certainty <= wantedCertainty).reverse();
  const texts = told
    .filter(({ pieces }, i) => told.findIndex((other) => other.pieces === pieces) === i)
    .map(({ certainty, pieces }) => `${String(pieces)} at ${percentText(certainty)}`);
  return `Reaches for ${texts.join(', ')}.`;
}

function surerText({ sizes, wantedCertainty }: Cover, amount: (value: number) => string): string {
  const surer = sizes.filter(({ certainty }) => certainty > wantedCertainty);
  if (surer.length === 0) return 'make more';
  return surer.map((size) => `${amount(size.amount)} at ${percentText(size.certainty)}`).join(', ');
}

function batchText(part: PartAmounts, batch: BatchAmounts, units: UnitSystem): string[] {
  const mass = (value: number): string => showMeasure(value, 'mass', units);
  const rows: [string, number][] = [
    ...batch.fats.map(({ title, massG }): [string, number] => [title, massG]),
    ...batch.acids.map(({ title, massG }): [string, number] => [title, massG]),
    ['Sodium lactate, 60 % solution', batch.sodiumLactateG],
    ['Salt', batch.saltG],
    ['Sugar', batch.sugarG],
    ...batch.additions.map(({ title, massG }): [string, number] => [title, massG]),
    [part.fragrance ?? 'Fragrance', batch.fragranceG],
    ...batch.colourants.flatMap(({ title, massG, carrier }): [string, number][] => [
      [title, massG],
      ...(carrier === undefined
        ? []
        : [[`  stirred into ${carrierName[carrier.kind]}`, carrier.massG] satisfies [string, number]]),
    ]),
  ];
  return [
    ...columns(rows.filter(([, value]) => value > 0).map(([name, value]) => [`      ${name}`, mass(value)])),
    `      ${lyeText(batch, mass)} into water ${mass(batch.waterG)}: goggles, gloves, never the other way round`,
    wrap(waterText(batch), 6, WIDTH),
  ];
}

const carrierName = { fat: 'oil', water: 'water', glycerol: 'glycerol' } as const;

function lyeText({ naohG, kohG }: BatchAmounts, mass: (value: number) => string): string {
  const alkalis = [...(naohG > 0 ? [`NaOH ${mass(naohG)}`] : []), ...(kohG > 0 ? [`KOH ${mass(kohG)}`] : [])];
  return `Lye: ${alkalis.join(' and ')}`;
}

function waterText({ water, superfat }: BatchAmounts): string {
  return (
    `That is lye of ${water.lyeConcentrationPercent.toFixed(1)} %, ${water.waterPerLye.toFixed(2)} times as much water as lye, ` +
    `water ${water.waterPercentOfFats.toFixed(0)} % of the fats. ` +
    `Superfat with any lot the standards allow: ${superfat.low.toFixed(1)} to ${superfat.high.toFixed(1)} %.`
  );
}

/** What was said of an earlier part is said again only where the bench needs it: as a reference to that part. */
function risksText(part: PartAmounts, seen: Map<string, string>): string[] {
  return part.risks.map(({ code, text, remedy }) => {
    const said = `${code} ${text}`;
    const before = seen.get(said);
    if (before !== undefined) return wrap(`! As for ${before}: ${text}`, 4, WIDTH, 2);
    seen.set(said, part.title);
    return wrap(`! ${text} ${remedy}`, 4, WIDTH, 2);
  });
}
