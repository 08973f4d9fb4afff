import type { PartAmounts, PlanDocument, PlannedStage, RunPlan } from '#contract';
import { localDateOf, localText, localTimeOf } from '#hours';
import { minuteOfIso } from '#units';

/**
 * A plan as text for a terminal or a pin board: tide table, amounts, sittings, odds and cautions of each run, or
 * why there is no plan.
 */
export function printPlan(plan: PlanDocument): string {
  const sections = [
    ...plan.runs.flatMap((run) => runSections(run, plan)),
    ...(plan.status === 'planned' ? [sittingsSection(plan), oddsSection(plan)] : [conflictSection(plan)]),
    cautionsSection(plan),
  ];
  return `${sections.filter((section) => section !== '').join('\n\n')}\n`;
}

function runSections(run: RunPlan, plan: PlanDocument): string[] {
  const head = `${run.title} · ${String(run.count)} pieces`;
  const ready =
    run.ready === null
      ? ''
      : `Cured about ${dayText(run.ready.likely, plan)} (${dayText(run.ready.low, plan)} to ${dayText(run.ready.high, plan)})`;
  return [`${head}\n${'─'.repeat(head.length)}`, tideTable(run, plan), ready, amountsSection(run)];
}

function tideTable(run: RunPlan, plan: PlanDocument): string {
  if (run.stages.length === 0) return '';
  const rows = run.stages.map((stage) => [
    nameOf(stage),
    stage.status === 'planned' ? timeText(stage.opensAt, plan) : stage.status,
    timeText(stage.bestAt, plan),
    stage.lastCallAt === null ? '—' : timeText(stage.lastCallAt, plan),
  ]);
  const table = columns([['Tide table', 'opens', 'best', 'last call'], ...rows]);
  return table
    .map((line, i) => (i === 0 ? line : `${line}\n${wrap(run.stages[i - 1]?.why ?? '', 4, 100)}`))
    .join('\n');
}

function nameOf(stage: PlannedStage): string {
  return stage.attempt === 1 ? stage.title : `${stage.title} (attempt ${String(stage.attempt)})`;
}

function amountsSection(run: RunPlan): string {
  return ['Amounts', ...run.amounts.map(amountsOf)].join('\n');
}

function amountsOf(part: PartAmounts): string {
  const { batch } = part;
  if (batch === undefined) {
    const what = part.kind === 'decor' ? `${String(part.pieces ?? 0)} pieces` : 'melt-and-pour base';
    return `  ${part.title}: ${what}${part.massG === undefined ? '' : `, ${gramText(part.massG)}`}`;
  }
  const extras: [string, number][] = [
    ['sodium lactate, 60 % solution', batch.sodiumLactateG],
    ['salt', batch.saltG],
    ['sugar', batch.sugarG],
    ['fragrance', batch.fragranceG],
  ];
  const lines = [
    `  ${part.title}: ${gramText(batch.batchG)} of batter, ${batch.batchMl.toFixed(0)} mL ` +
      `(${(part.neededMl ?? 0).toFixed(0)} mL in the pieces)`,
    ...columns(batch.fats.map((fat) => [`    ${fat.title}`, gramText(fat.massG)])),
    `    Lye (NaOH) ${gramText(batch.naohG)} into water ${gramText(batch.waterG)}: goggles, gloves, never the other way round`,
    ...extras.filter(([, mass]) => mass > 0).map(([name, mass]) => `    ${name} ${gramText(mass)}`),
    ...part.warnings.map((warning) => `    ! ${warning}`),
  ];
  return lines.join('\n');
}

function sittingsSection(plan: PlanDocument): string {
  const titles = new Map(
    plan.runs.flatMap((run) =>
      run.stages.map((s) => [`${run.run}/${s.key}#${String(s.attempt)}`, nameOf(s)]),
    ),
  );
  const lines = plan.sittings.map((sitting) => {
    const what = sitting.stages.map((s) => titles.get(`${s.run}/${s.stage}#${String(s.attempt)}`) ?? s.stage);
    const end = localTimeOf(minuteOfIso(sitting.endAt), plan.timeZone);
    return `  ${timeText(sitting.startAt, plan)} to ${end}  ${what.join(' · ')}`;
  });
  return ['Sittings', ...lines].join('\n');
}

function oddsSection(plan: PlanDocument): string {
  if (plan.odds === null) return '';
  const { probability, standardError, scenarios } = plan.odds;
  const head =
    probability > 0.995
      ? `Odds that every window is met: over 99 % (${String(scenarios)} scenarios)`
      : `Odds that every window is met: ${percentText(probability)} ± ${percentText(standardError)} ` +
        `(${String(scenarios)} scenarios)`;
  const weak = plan.weakLinks.slice(0, 3).map((link) => {
    const run = plan.runs.find((r) => r.run === link.run);
    const stage = run?.stages.find((s) => s.key === link.stage && s.attempt === link.attempt);
    return `  weak link, ${percentText(link.share)} lost: ${stage?.title ?? 'cured in time'}. ${link.why}`;
  });
  return [head, ...weak].join('\n');
}

function conflictSection(plan: PlanDocument): string {
  if (plan.status === 'undecided')
    return 'No plan was found, and none was ruled out: the search ran out of steps.';
  return ['There is no plan. These cannot all hold:', ...plan.conflict.map((c) => `  • ${c.text}`)].join(
    '\n',
  );
}

function cautionsSection(plan: PlanDocument): string {
  const cautions = new Map<string, string>();
  for (const run of plan.runs) {
    for (const caution of [
      ...run.cautions,
      ...run.amounts.flatMap((a) => a.cautions),
      ...run.stages.flatMap((s) => s.cautions),
    ]) {
      cautions.set(caution.code, caution.text);
    }
  }
  return ['Take care', ...[...cautions.values()].map((text) => wrap(text, 2, 100))].join('\n');
}

function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = rows.reduce<number[]>(
    (max, row) => row.map((cell, i) => Math.max(max[i] ?? 0, cell.length)),
    [],
  );
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

function wrap(text: string, indent: number, width: number): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + word.length + 1 > width - indent) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((l) => ' '.repeat(indent) + l).join('\n');
}

function gramText(mass: number): string {
  return mass < 100 ? `${mass.toFixed(1)} g` : `${mass.toFixed(0)} g`;
}

function percentText(share: number): string {
  return `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`;
}

function timeText(at: string, plan: PlanDocument): string {
  return localText(minuteOfIso(at), plan.timeZone);
}

function dayText(at: string, plan: PlanDocument): string {
  return localDateOf(minuteOfIso(at), plan.timeZone);
}
