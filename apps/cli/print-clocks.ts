import type {
  ClockForecast,
  ClockRules,
  ClocksDocument,
  ForecastRecord,
  FillingTime,
  SoapState,
} from '#contract';
import type { Texts } from '#words';
import { heatText } from './print-heat.js';
import { piecesText } from './print-amounts.js';
import { columns, heading, wrap } from './text-layout.js';
import { printed } from './words/index.js';

const WIDTH = 100;

/** The clocks of runs as text: every state with its band and how it came about, then what each rule says. */
export function printClocks(document: ClocksDocument, texts: Texts): string {
  const sections = document.runs.flatMap((run) => [
    heading(run.title),
    ...run.parts.map((part, i) => partSection(part, run.parts.slice(0, i), texts)),
    cureSection(run.cure, texts),
    lessonsSection(run, texts),
  ]);
  return `${[...sections, reasonsSection(document, texts)].filter((text) => text !== '').join('\n\n')}\n`;
}

type Part = ClocksDocument['runs'][number]['parts'][number];

function partSection(part: Part, before: readonly Part[], texts: Texts): string {
  const { title, clocks, filling, moves, risks } = part;
  const same = before.find((other) => clockText(other, texts) === clockText(part, texts));
  const beyond = [...new Set(clocks.flatMap((clock) => clock.beyond.map(texts.of)))];
  return [
    title,
    ...(clocks.length === 0
      ? []
      : same === undefined
        ? [clockText(part, texts), ...factorsText(clocks, texts), ...movesText(moves, texts)]
        : [`  ${printed[texts.language].clocks.sameAs(texts.quoted(same.title))}`]),
    ...fillingText(filling, texts),
    ...heatText(part, before, texts),
    ...(same === undefined ? beyond.map((sentence) => wrap(`! ${sentence}`, 2, WIDTH, 2)) : []),
    ...risks
      .filter(({ code }) => code.startsWith('soap.') || code.startsWith('fragrance.'))
      // Its heat says so already, with what would change it.
      .filter(({ code }) => part.heat === null || !code.startsWith('soap.gel-'))
      .map((risk) => wrap(`! ${texts.of(risk)} ${texts.remedyOf(risk)}`, 2, WIDTH, 2)),
  ].join('\n');
}

function clockText({ clocks }: Part, texts: Texts): string {
  const words = printed[texts.language].clocks;
  const rows = clocks.map((clock) => [
    `  ${stateText(clock, texts)}`,
    texts.band(clock.band),
    texts.names.states[clock.state].after,
    isSeen(clock) ? words.now(texts.band(clock.now)) : '',
  ]);
  return columns(rows).join('\n');
}

/** A state with “until” after it where it closes a window. */
function stateText(
  { state, closes }: { readonly state: SoapState; readonly closes: boolean },
  texts: Texts,
): string {
  const { is } = texts.names.states[state];
  return closes ? printed[texts.language].clocks.until(is) : is;
}

/** The factors that made the times, each list of them once. */
function factorsText(clocks: readonly ClockForecast[], texts: Texts): string[] {
  const words = printed[texts.language].clocks;
  const byFactors = new Map<string, string[]>();
  for (const { reasons, state } of clocks) {
    const factors = reasons
      .map((reason) => `${texts.of(reason)} ×${texts.number(reason.factor, 2)}`)
      .join('; ');
    byFactors.set(factors, [...(byFactors.get(factors) ?? []), texts.names.states[state].is]);
  }
  return [...byFactors].map(([factors, titles]) =>
    wrap(words.factors(titles.join(', '), factors === '' ? words.atReference : factors), 4, WIDTH, 2),
  );
}

/** Whether the log has moved the band of this batch. */
function isSeen({ band, now }: ClockForecast): boolean {
  return (
    Math.abs(Math.log(now.likely / band.likely)) > 0.01 || Math.abs(Math.log(now.high / band.high)) > 0.01
  );
}

function fillingText(filling: FillingTime | null, texts: Texts): string[] {
  if (filling === null) return [];
  const words = printed[texts.language].clocks;
  const { neededMin, stretchMin, chance, piecesSurely, batches } = filling;
  const told = words.filling(
    texts.duration(neededMin),
    texts.band(stretchMin),
    texts.share(chance),
    piecesText(piecesSurely, texts),
  );
  const split = batches === 1 ? [] : [words.split(texts.number(batches), texts.share(0.9))];
  return [wrap([told, ...split].join(' '), 2, WIDTH)];
}

/** The states that makers turn knobs for; the others follow them. */
const TOLD_STATES = ['medium-trace', 'firm', 'cured'] as const;

function movesText(moves: Part['moves'], texts: Texts): string[] {
  return TOLD_STATES.flatMap((state) => {
    // One line for each knob, and none that nobody would turn.
    const of = moves.filter((move) => move.state === state && move.to !== 'seizing');
    const told = of.filter((move, i) => of.findIndex(({ input }) => input === move.input) === i).slice(0, 3);
    if (told.length === 0) return [];
    const name = texts.quoted(texts.names.states[state].is);
    const text = printed[texts.language].clocks.moves(name, told.map(texts.of).join('; '));
    return [wrap(text, 4, WIDTH, 2)];
  });
}

function cureSection(cure: ClocksDocument['runs'][number]['cure'], texts: Texts): string {
  if (cure.weighings === 0) return '';
  const words = printed[texts.language].clocks;
  const { weighings, readyDays, settledG, settled, lossPercentPerWeek, note } = cure;
  const days = (count: number): string => texts.number(count, 0);
  const told = [
    ...(readyDays === undefined || settledG === undefined
      ? []
      : [
          words.weighings(
            texts.number(weighings),
            texts.mass(settledG.likely),
            texts.percent(lossPercentPerWeek),
            days(readyDays.likely),
            texts.range(days(readyDays.low), days(readyDays.high)),
          ),
        ]),
    ...(note === undefined ? [] : [texts.of(note)]),
    ...(settled ? [words.settled] : []),
  ];
  return [words.cure, wrap(told.join(' '), 2, WIDTH)].join('\n');
}

function lessonsSection(
  { lessons, onlyDone = [], record }: Pick<ClocksDocument['runs'][number], 'lessons' | 'onlyDone' | 'record'>,
  texts: Texts,
): string {
  if (lessons.length + onlyDone.length === 0 && record === undefined) return '';
  const words = printed[texts.language].clocks;
  const untaught = onlyDone.map(({ pace, batches }) =>
    wrap(words.onlyDone(texts.names.paces[pace], texts.number(batches)), 2, WIDTH, 2),
  );
  const rows = columns(
    lessons.map(({ pace, recipe, recipeTitle, factor, widthShare }) => [
      `  ${texts.names.paces[pace]}, ${recipe === null ? words.anyRecipe : (recipeTitle ?? recipe)}`,
      `×${texts.number(factor.likely, 2)} (${texts.range(texts.number(factor.low, 2), texts.number(factor.high, 2))})`,
      words.asWide(texts.share(widthShare)),
    ]),
  );
  const told = lessons.flatMap(({ observations }, i) => {
    const entries = [...new Set(observations.flatMap((each) => each.entries))];
    return [rows[i] ?? '', wrap(words.from(entries.join(', ')), 6, WIDTH, 2)];
  });
  const came = record === undefined ? [] : [wrap(recordText(record, texts), 2, WIDTH, 2)];
  return [words.taught, ...told, ...untaught, ...came].join('\n');
}

function recordText({ forecasts, expectedInside }: ForecastRecord, texts: Texts): string {
  const count = (verdict: 'inside' | 'unknown'): number =>
    forecasts.filter((each) => each.verdict === verdict).length;
  const [inside, unknown, all] = [count('inside'), count('unknown'), forecasts.length];
  const written = [all, inside, all - inside - unknown, unknown].map((each) => texts.number(each));
  const [of = '', came = '', missed = '', unseen = ''] = written;
  return printed[texts.language].clocks.record(of, came, missed, unseen, texts.number(expectedInside, 0));
}

/** Each rule that counted somewhere, once, with its evidence. */
function reasonsSection(document: ClocksDocument, texts: Texts): string {
  const told = new Map<string, string>();
  for (const { reasons } of document.runs.flatMap((run) => run.parts.flatMap((part) => part.clocks))) {
    for (const { rule, evidence } of reasons) {
      told.set(rule, `${texts.names.rules[rule]} (${texts.names.evidence(evidence)})`);
    }
  }
  if (told.size === 0) return '';
  return [
    printed[texts.language].clocks.why,
    ...[...told.values()].map((text) => wrap(text, 2, WIDTH, 2)),
  ].join('\n');
}

/** Every state and rule with the evidence behind it. */
export function printRules({ states, rules }: ClockRules, texts: Texts): string {
  const { names } = texts;
  const words = printed[texts.language].clocks;
  const bases = states.map((line) => [
    `  ${stateText(line, texts)}`,
    texts.duration(line.baseMin),
    `σ ${texts.number(line.sigma, 2)}`,
    names.states[line.state].after,
    names.evidence(line.evidence),
  ]);
  const lines = rules.flatMap((line) => {
    const { acts, reads, table, sigma, evidence } = line;
    const read = reads === 'log' ? words.log : names.inputs[reads];
    const points = table.map(
      ({ value, factor }) => `${texts.read(reads, value)} ×${texts.number(factor, 2)}`,
    );
    const what = acts.map((state) => names.states[state].is).join(', ');
    return [
      `  ${read}: ${points.join(', ')}; σ ${texts.number(sigma, 2)}; ${names.evidence(evidence)}`,
      wrap(`${texts.of(line)} ${words.actsOn(what)}`, 4, WIDTH),
    ];
  });
  return [words.states, ...columns(bases), '', words.rules, ...lines, ''].join('\n');
}
