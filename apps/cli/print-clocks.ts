import type { ClockForecast, ClockRules, ClocksDocument, FillingTime, Lesson } from '#contract';
import type { Texts } from '#words';
import { columns, heading, percentText, wrap } from './text-layout.js';

const WIDTH = 100;

/** The clocks of runs as text: every state with its band and how it came about, then what each rule says. */
export function printClocks(document: ClocksDocument, texts: Texts): string {
  const sections = document.runs.flatMap((run) => [
    heading(run.title),
    ...run.parts.map((part, i) => partSection(part, run.parts.slice(0, i), texts)),
    cureSection(run.cure, texts),
    lessonsSection(run.lessons, texts),
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
    ...(same === undefined
      ? [clockText(part, texts), ...factorsText(clocks, texts), ...movesText(moves, texts)]
      : [`  The same clocks as “${same.title}”.`]),
    ...fillingText(filling, texts),
    ...(same === undefined ? beyond.map((sentence) => wrap(`! ${sentence}`, 2, WIDTH, 2)) : []),
    ...risks
      .filter(({ code }) => code.startsWith('soap.') || code.startsWith('fragrance.'))
      .map((risk) => wrap(`! ${texts.of(risk)} ${texts.remedyOf(risk)}`, 2, WIDTH, 2)),
  ].join('\n');
}

function clockText({ clocks }: Part, texts: Texts): string {
  const rows = clocks.map((clock) => [
    `  ${texts.names.states[clock.state].is}${clock.closes ? ' until' : ''}`,
    texts.band(clock.band),
    texts.names.states[clock.state].after,
    isSeen(clock) ? `now ${texts.band(clock.now)}` : '',
  ]);
  return columns(rows).join('\n');
}

/** The factors that made the times, each list of them once. */
function factorsText(clocks: readonly ClockForecast[], texts: Texts): string[] {
  const byFactors = new Map<string, string[]>();
  for (const { reasons, state } of clocks) {
    const factors = reasons
      .map((reason) => `${texts.of(reason)} ×${texts.number(reason.factor, 2)}`)
      .join('; ');
    byFactors.set(factors, [...(byFactors.get(factors) ?? []), texts.names.states[state].is]);
  }
  return [...byFactors].map(([factors, titles]) =>
    wrap(`${titles.join(', ')}: ${factors === '' ? 'as at the reference point' : factors}.`, 4, WIDTH, 2),
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
  const { neededMin, stretchMin, chance, piecesSurely, batches } = filling;
  const split = batches === 1 ? '' : ` ${String(batches)} batches would make every one of them 90 % sure.`;
  return [
    wrap(
      `All pieces take ${texts.duration(neededMin)}; the batter leaves ${texts.band(stretchMin)} for it. In time: ` +
        `${percentText(chance)}; ${String(piecesSurely)} pieces nine times in ten.${split}`,
      2,
      WIDTH,
    ),
  ];
}

/** The states that makers turn knobs for; the others follow them. */
const TOLD_STATES = ['medium-trace', 'firm', 'cured'] as const;

function movesText(moves: Part['moves'], texts: Texts): string[] {
  return TOLD_STATES.flatMap((state) => {
    // One line for each knob, and none that nobody would turn.
    const of = moves.filter((move) => move.state === state && move.to !== 'seizing');
    const told = of.filter((move, i) => of.findIndex(({ input }) => input === move.input) === i).slice(0, 3);
    if (told.length === 0) return [];
    const text = `What moves “${texts.names.states[state].is}” most: ${told.map(texts.of).join('; ')}.`;
    return [wrap(text, 4, WIDTH, 2)];
  });
}

function cureSection(cure: ClocksDocument['runs'][number]['cure'], texts: Texts): string {
  if (cure.weighings === 0) return '';
  const { readyDays, settledG, settled, lossPercentPerWeek } = cure;
  const note = cure.note === undefined ? '' : texts.of(cure.note);
  const forecast =
    readyDays === undefined || settledG === undefined
      ? note
      : `By ${String(cure.weighings)} weighings a piece will settle at ${texts.mass(settledG.likely)}. It is cured once it loses less than ${texts.percent(lossPercentPerWeek)} in a week: ` +
        `${readyDays.likely.toFixed(0)} days after unmoulding (${readyDays.low.toFixed(0)} to ${readyDays.high.toFixed(0)}).${note === '' ? '' : ` ${note}`}`;
  return [
    'Cure',
    wrap(`${forecast}${settled ? ' It has stopped losing weight: it is cured.' : ''}`, 2, WIDTH),
  ].join('\n');
}

function lessonsSection(lessons: readonly Lesson[], texts: Texts): string {
  if (lessons.length === 0) return '';
  const rows = columns(
    lessons.map(({ pace, recipe, recipeTitle, factor, widthShare }) => [
      `  ${texts.names.paces[pace]}, ${recipe === null ? 'any recipe' : (recipeTitle ?? recipe)}`,
      `×${factor.likely.toFixed(2)} (${factor.low.toFixed(2)} to ${factor.high.toFixed(2)})`,
      `band ${percentText(widthShare)} as wide`,
    ]),
  );
  const told = lessons.flatMap(({ observations }, i) => {
    const entries = [...new Set(observations.flatMap((each) => each.entries))];
    return [rows[i] ?? '', wrap(`from ${entries.join(', ')}`, 6, WIDTH, 2)];
  });
  return ['What your log has taught', ...told].join('\n');
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
  return ['Why', ...[...told.values()].map((text) => wrap(text, 2, WIDTH, 2))].join('\n');
}

/** Every state and rule with the evidence behind it. */
export function printRules({ states, rules }: ClockRules, texts: Texts): string {
  const { names } = texts;
  const bases = states.map(({ state, closes, baseMin, sigma, evidence }) => [
    `  ${names.states[state].is}${closes ? ' until' : ''}`,
    texts.duration(baseMin),
    `σ ${sigma.toFixed(2)}`,
    names.states[state].after,
    names.evidence(evidence),
  ]);
  const lines = rules.flatMap((line) => {
    const { rule, acts, reads, table, sigma, evidence } = line;
    const points = table.map(
      ({ value, factor }) => `${texts.read(reads, value)} ×${texts.number(factor, 2)}`,
    );
    return [
      `  ${rule}: ${points.join(', ')}; σ ${sigma.toFixed(2)}; ${names.evidence(evidence)}`,
      wrap(`${texts.of(line)} Acts on ${acts.join(', ')}.`, 4, WIDTH),
    ];
  });
  return ['States at the reference point', ...columns(bases), '', 'Rules', ...lines, ''].join('\n');
}
