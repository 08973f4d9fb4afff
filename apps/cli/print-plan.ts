import type { Caution, Message, PlanDocument, PlannedStage, RunPlan } from '#contract';
import { localDateOf, localText, localTimeOf } from '#hours';
import { minuteOfIso } from '#units';
import type { Texts } from '#words';
import { amountsSection } from './print-amounts.js';
import { cautionsSection, columns, heading, percentText, sentences, wrap } from './text-layout.js';

/**
 * A plan as text for a terminal or a pin board: tide table, amounts, sittings, odds and cautions of each run, or
 * why there is no plan.
 */
export function printPlan(plan: PlanDocument, texts: Texts): string {
  const sections = [
    ...plan.runs.flatMap((run) => runSections(run, plan, texts)),
    ...(plan.status === 'planned'
      ? [sittingsSection(plan), oddsSection(plan, texts), guaranteeSection(plan, texts)]
      : [conflictSection(plan, texts)]),
    cautionsSection(cautionsOf(plan), texts),
  ];
  return `${sections.filter((section) => section !== '').join('\n\n')}\n`;
}

function runSections(run: RunPlan, plan: PlanDocument, texts: Texts): string[] {
  const head = `${run.title} · ${String(run.count)} pieces`;
  const ready =
    run.ready === null
      ? ''
      : `Cured about ${dayText(run.ready.likely, plan)} (${dayText(run.ready.low, plan)} to ${dayText(run.ready.high, plan)})`;
  return [
    heading(head),
    tideTable(run, plan, texts),
    addedSection(run, texts),
    ready,
    amountsSection(run.amounts, texts),
  ];
}

function tideTable(run: RunPlan, plan: PlanDocument, texts: Texts): string {
  if (run.stages.length === 0) return '';
  const rows = run.stages.map((stage) => [
    nameOf(stage),
    stage.status === 'planned' ? timeText(stage.opensAt, plan) : stage.status,
    timeText(stage.bestAt, plan),
    stage.lastCallAt === null ? '—' : timeText(stage.lastCallAt, plan),
  ]);
  const table = columns([['Tide table', 'opens', 'best', 'last call'], ...rows]);
  return table
    .map((line, i) =>
      i === 0 ? line : `${line}\n${wrap(sentences(run.stages[i - 1]?.why ?? [], texts), 4, 100)}`,
    )
    .join('\n');
}

function addedSection({ added = [], stages, amounts }: RunPlan, texts: Texts): string {
  if (added.length === 0) return '';
  const stageTitle = (key: string): string => `“${stages.find((stage) => stage.key === key)?.title ?? key}”`;
  const lines = added.map((each) => {
    if ('after' in each) return `${stageTitle(each.stage)} comes after ${stageTitle(each.after)}.`;
    const part = amounts.find((amount) => amount.part === each.part)?.title ?? each.part;
    return `${stageTitle(each.stage)} waits until ${part} is ${texts.names.states[each.opens].is}.`;
  });
  return ['Added, as the design does not say it', ...lines.map((line) => `  • ${line}`)].join('\n');
}

function nameOf(stage: PlannedStage): string {
  return stage.attempt === 1 ? stage.title : `${stage.title} (attempt ${String(stage.attempt)})`;
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

function oddsSection(plan: PlanDocument, texts: Texts): string {
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
    const where = stage?.title ?? 'cured in time';
    const head = `${where}, lost ${texts.odds(link.share)}. ${texts.of(link.why)}`;
    return wrap(head, 2, 100, 2);
  });
  return [head, ...weak].join('\n');
}

function guaranteeSection({ guarantee }: PlanDocument, texts: Texts): string {
  if (guarantee === null) return '';
  const { holds, bandPercent, reasons } = guarantee;
  const head = `Kept whatever the soap does within its ${String(bandPercent)} % bands`;
  if (holds) return `${head}: yes, hours and bowl aside.`;
  const lines = bullets(reasons, texts);
  return [`${head}: no, even with hours and bowl aside. These cannot all hold then:`, ...lines].join('\n');
}

function conflictSection(plan: PlanDocument, texts: Texts): string {
  if (plan.status === 'undecided')
    return 'No plan was found, and none was ruled out: the search ran out of steps.';
  const { timing = null, relaxations = [] } = plan.resolution ?? {};
  const none = 'No single one of these is enough to give way: more stands behind.';
  return [
    'There is no plan. These cannot all hold:',
    ...bullets(plan.conflict, texts),
    ...(timing === null ? [] : [wrap(texts.of(timing), 0, 100)]),
    ...(plan.resolution === undefined
      ? []
      : relaxations.length === 0
        ? [none]
        : ['Any one of these makes a plan possible:', ...bullets(relaxations, texts)]),
  ].join('\n');
}

function bullets(messages: readonly Message[], texts: Texts): string[] {
  return messages.map((each) => wrap(`• ${texts.of(each)}`, 2, 100, 2));
}

export function cautionsOf(plan: PlanDocument): Caution[] {
  return plan.runs.flatMap((run) => [
    ...run.cautions,
    ...run.amounts.flatMap((a) => a.cautions),
    ...run.stages.flatMap((s) => s.cautions),
  ]);
}

function timeText(at: string, plan: PlanDocument): string {
  return localText(minuteOfIso(at), plan.timeZone);
}

function dayText(at: string, plan: PlanDocument): string {
  return localDateOf(minuteOfIso(at), plan.timeZone);
}
