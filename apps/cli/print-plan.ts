import type { Caution, Message, PlanDocument, PlannedStage, RunPlan } from '#contract';
import type { Texts } from '#words';
import { amountsSection } from './print-amounts.js';
import { groupsSection, stageText } from './print-groups.js';
import { cautionsSection, columns, heading, sentences, wrap } from './text-layout.js';
import { printed } from './words/index.js';

/**
 * A plan as text for a terminal or a pin board: tide table, amounts, sittings, odds and cautions of each run, or
 * why there is no plan.
 */
export function printPlan(plan: PlanDocument, texts: Texts): string {
  const sections = [
    ...plan.runs.flatMap((run) => runSections(run, texts)),
    ...(plan.status === 'planned'
      ? [sittingsSection(plan, texts), oddsSection(plan, texts), guaranteeSection(plan, texts)]
      : [conflictSection(plan, texts)]),
    cautionsSection(cautionsOf(plan), texts),
  ];
  return `${sections.filter((section) => section !== '').join('\n\n')}\n`;
}

function runSections(run: RunPlan, texts: Texts): string[] {
  const words = printed[texts.language].plan;
  const head = `${run.title} · ${words.pieces(texts.number(run.count))}`;
  return [
    heading(head),
    groupsSection(run, run.amounts, texts),
    tideTable(run, texts),
    addedSection(run, texts),
    daysToCountOn(run, texts),
    amountsSection(run, texts),
  ];
}

/** When the soap is likely out of its moulds and cured, and by when it is in 9 of 10 runs. */
function daysToCountOn({ stages, ready }: RunPlan, texts: Texts): string {
  const words = printed[texts.language].plan;
  const unmoulding = stages.flatMap((stage) =>
    stage.kind === 'unmould' && stage.status === 'planned' && stage.surelyOpenAt !== null
      ? words.opens(nameOf(stage, texts), texts.dayTime(stage.opensAt), texts.dayTime(stage.surelyOpenAt))
      : [],
  );
  const cured = ready === null ? [] : [words.cured(texts.date(ready.likely), texts.date(ready.high))];
  return [...unmoulding, ...cured].map((line) => wrap(line, 0, 100)).join('\n');
}

function tideTable(run: RunPlan, texts: Texts): string {
  if (run.stages.length === 0) return '';
  const words = printed[texts.language].plan;
  const rows = run.stages.map((stage) => [
    nameOf({ ...stage, title: stageText(stage, run.groups, texts) }, texts),
    stage.status === 'planned' ? texts.dayTime(stage.opensAt) : words.status[stage.status],
    texts.dayTime(stage.bestAt),
    stage.lastCallAt === null ? '—' : texts.dayTime(stage.lastCallAt),
  ]);
  const table = columns([words.tideTable, ...rows]);
  return table
    .map((line, i) =>
      i === 0 ? line : `${line}\n${wrap(sentences(run.stages[i - 1]?.why ?? [], texts), 4, 100)}`,
    )
    .join('\n');
}

function addedSection({ added = [], stages, amounts }: RunPlan, texts: Texts): string {
  if (added.length === 0) return '';
  const words = printed[texts.language].plan;
  const stageTitle = (key: string): string =>
    texts.quoted(stages.find((stage) => stage.key === key)?.title ?? key);
  const lines = added.map((each) => {
    if ('after' in each) return words.comesAfter(stageTitle(each.stage), stageTitle(each.after));
    const part = amounts.find((amount) => amount.part === each.part)?.title ?? each.part;
    const stage = stageTitle(each.stage);
    const { of, is, until = is } = texts.names.states['opens' in each ? each.opens : each.closes];
    const bearer = of === undefined ? part : of(part);
    return 'opens' in each ? words.waitsUntil(stage, bearer, is) : words.doneWhile(stage, bearer, until);
  });
  return [words.added, ...lines.map((line) => `  • ${line}`)].join('\n');
}

function nameOf({ title, attempt }: Pick<PlannedStage, 'title' | 'attempt'>, texts: Texts): string {
  return attempt === 1 ? title : printed[texts.language].plan.attempt(title, texts.number(attempt));
}

function sittingsSection(plan: PlanDocument, texts: Texts): string {
  const words = printed[texts.language].plan;
  const titles = new Map(
    plan.runs.flatMap((run) =>
      run.stages.map((s) => [`${run.run}/${s.key}#${String(s.attempt)}`, nameOf(s, texts)]),
    ),
  );
  const lines = plan.sittings.map((sitting) => {
    const what = sitting.stages.map((s) => titles.get(`${s.run}/${s.stage}#${String(s.attempt)}`) ?? s.stage);
    const when = words.until(texts.dayTime(sitting.startAt), texts.time(sitting.endAt));
    return `  ${when}  ${what.join(' · ')}`;
  });
  return [words.sittings, ...lines].join('\n');
}

function oddsSection(plan: PlanDocument, texts: Texts): string {
  if (plan.odds === null) return '';
  const words = printed[texts.language].plan;
  const { soundByTheDay, soundAtAll, asPlanned } = plan.odds;
  const [byTheDay, atAll, all] = [soundByTheDay, soundAtAll, asPlanned].map((each) => texts.odds(each)) as [
    string,
    string,
    string,
  ];
  // Without a day that some runs miss, the first two are one.
  const told = soundAtAll > soundByTheDay ? words.oddsByTheDay(byTheDay, atAll, all) : words.odds(atAll, all);
  const head = wrap(told, 0, 100);
  const weak = plan.weakLinks.slice(0, 3).map((link) => {
    const run = plan.runs.find((r) => r.run === link.run);
    const stage = run?.stages.find((s) => s.key === link.stage && s.attempt === link.attempt);
    const where = stage?.title ?? words.curedInTime;
    return wrap(`${words.lost(where, texts.odds(link.share))} ${texts.of(link.why)}`, 2, 100, 2);
  });
  return [head, ...weak].join('\n');
}

function guaranteeSection({ guarantee }: PlanDocument, texts: Texts): string {
  if (guarantee === null) return '';
  const { holds, bandPercent, reasons } = guarantee;
  const words = printed[texts.language].plan;
  const tail = texts.percent((100 - bandPercent) / 2);
  if (holds) return wrap(words.keeps(tail), 0, 100);
  return [wrap(words.breaks(tail), 0, 100), ...bullets(reasons, texts)].join('\n');
}

function conflictSection(plan: PlanDocument, texts: Texts): string {
  const words = printed[texts.language].plan;
  if (plan.status === 'undecided') return words.undecided;
  const { timing = null, relaxations = [] } = plan.resolution ?? {};
  return [
    words.noPlan,
    ...bullets(plan.conflict, texts),
    ...(timing === null ? [] : [wrap(texts.of(timing), 0, 100)]),
    ...(plan.resolution === undefined
      ? []
      : relaxations.length === 0
        ? [words.noneEnough]
        : [words.anyOne, ...bullets(relaxations, texts)]),
  ].join('\n');
}

function bullets(messages: readonly Message[], texts: Texts): string[] {
  return messages.map((each) => wrap(`• ${texts.of(each)}`, 2, 100, 2));
}

export function cautionsOf(plan: PlanDocument): Caution[] {
  return plan.runs.flatMap((run) => [
    ...run.cautions,
    ...[...(run.batches ?? []), ...run.amounts].flatMap((each) => each.cautions),
    ...run.stages.flatMap((s) => s.cautions),
  ]);
}
