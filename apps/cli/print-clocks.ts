import type { ClockForecast, ClockRules, ClocksDocument, FillingTime, Lesson } from '#contract';
import { bandText, durationText } from '#runs';
import { columns, heading, percentText, wrap } from './text-layout.js';

const WIDTH = 100;

/** The clocks of runs as text: every state with its band and how it came about, then what each rule says. */
export function printClocks(document: ClocksDocument): string {
  const sections = document.runs.flatMap((run) => [
    heading(run.title),
    ...run.parts.map((part, i) => partSection(part, run.parts.slice(0, i))),
    cureSection(run.cure),
    lessonsSection(run.lessons),
  ]);
  return `${[...sections, reasonsSection(document)].filter((text) => text !== '').join('\n\n')}\n`;
}

type Part = ClocksDocument['runs'][number]['parts'][number];

function partSection(part: Part, before: readonly Part[]): string {
  const { title, clocks, filling, moves, risks } = part;
  const same = before.find((other) => clockText(other) === clockText(part));
  const beyond = [...new Set(clocks.flatMap((clock) => clock.beyond))];
  return [
    title,
    ...(same === undefined
      ? [clockText(part), ...factorsText(clocks), ...movesText(moves, clocks)]
      : [`  The same clocks as “${same.title}”.`]),
    ...fillingText(filling),
    ...(same === undefined ? beyond.map((sentence) => wrap(`! ${sentence}`, 2, WIDTH, 2)) : []),
    ...risks
      .filter(({ code }) => code.startsWith('soap.') || code.startsWith('fragrance.'))
      .map(({ text, remedy }) => wrap(`! ${text} ${remedy}`, 2, WIDTH, 2)),
  ].join('\n');
}

function clockText({ clocks }: Part): string {
  const rows = clocks.map((clock) => [
    `  ${clock.title}${clock.closes ? ' until' : ''}`,
    bandText(clock.band),
    clock.from,
    isSeen(clock) ? `now ${bandText(clock.now)}` : '',
  ]);
  return columns(rows).join('\n');
}

/** The factors that made the times, each list of them once. */
function factorsText(clocks: readonly ClockForecast[]): string[] {
  const byFactors = new Map<string, string[]>();
  for (const { reasons, title } of clocks) {
    const factors = reasons.map(({ factor, read }) => `×${factor.toFixed(2)} for ${read}`).join(', ');
    byFactors.set(factors, [...(byFactors.get(factors) ?? []), title]);
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

function fillingText(filling: FillingTime | null): string[] {
  if (filling === null) return [];
  const { neededMin, stretchMin, chance, piecesSurely, batches } = filling;
  const split = batches === 1 ? '' : ` ${String(batches)} batches would make every one of them 90 % sure.`;
  return [
    wrap(
      `All pieces take ${durationText(neededMin)}; the batter leaves ${bandText(stretchMin)} for it. In time: ` +
        `${percentText(chance)}; ${String(piecesSurely)} pieces nine times in ten.${split}`,
      2,
      WIDTH,
    ),
  ];
}

/** The states that makers turn knobs for; the others follow them. */
const TOLD_STATES: readonly string[] = ['medium-trace', 'firm', 'cured'];

function movesText(moves: Part['moves'], clocks: readonly ClockForecast[]): string[] {
  return TOLD_STATES.flatMap((state) => {
    // One line for each knob, and none that nobody would turn.
    const of = moves.filter((move) => move.state === state && move.to !== 'seizing');
    const told = of.filter((move, i) => of.findIndex(({ input }) => input === move.input) === i).slice(0, 3);
    const title = clocks.find((clock) => clock.state === state)?.title;
    if (told.length === 0 || title === undefined) return [];
    const text = `What moves “${title}” most: ${told.map((move) => move.text).join('; ')}.`;
    return [wrap(text, 4, WIDTH, 2)];
  });
}

function cureSection(cure: ClocksDocument['runs'][number]['cure']): string {
  if (cure.weighings === 0) return '';
  const { readyDays, settledG, settled, rule, note } = cure;
  const forecast =
    readyDays === undefined || settledG === undefined
      ? (note ?? '')
      : `By ${String(cure.weighings)} weighings a piece will settle at ${settledG.likely.toFixed(1)} g; ${rule}: ` +
        `${readyDays.likely.toFixed(0)} days after unmoulding (${readyDays.low.toFixed(0)} to ${readyDays.high.toFixed(0)}).${note === undefined ? '' : ` ${note}`}`;
  return [
    'Cure',
    wrap(`${forecast}${settled ? ' It has stopped losing weight: it is cured.' : ''}`, 2, WIDTH),
  ].join('\n');
}

function lessonsSection(lessons: readonly Lesson[]): string {
  if (lessons.length === 0) return '';
  const rows = columns(
    lessons.map(({ title, factor, widthShare }) => [
      `  ${title}`,
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
function reasonsSection(document: ClocksDocument): string {
  const told = new Map<string, string>();
  for (const { reasons } of document.runs.flatMap((run) => run.parts.flatMap((part) => part.clocks))) {
    for (const { rule, why, evidence } of reasons) told.set(rule, `${why} (${evidence})`);
  }
  if (told.size === 0) return '';
  return ['Why', ...[...told.values()].map((text) => wrap(text, 2, WIDTH, 2))].join('\n');
}

/** Every state and rule with the evidence behind it. */
export function printRules({ states, rules }: ClockRules): string {
  const bases = states.map(({ title, closes, baseMin, sigma, from, evidence }) => [
    `  ${title}${closes ? ' until' : ''}`,
    durationText(baseMin),
    `σ ${sigma.toFixed(2)}`,
    from,
    evidence,
  ]);
  const lines = rules.flatMap(({ rule, acts, table, sigma, why, evidence }) => [
    `  ${rule}: ${table}; σ ${sigma.toFixed(2)}; ${evidence}`,
    wrap(`${why} Acts on ${acts.join(', ')}.`, 4, WIDTH),
  ]);
  return ['States at the reference point', ...columns(bases), '', 'Rules', ...lines, ''].join('\n');
}
