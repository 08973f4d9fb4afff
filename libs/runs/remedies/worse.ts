import type { PlanDocument, RemedyLoss } from '#contract';
import { minuteOfIso } from '#units';
import { benchMinutes, runPairs, type Compared } from './compared.js';
import { newCautions, newRisks } from './new-risks.js';

/** A difference in a chance that is below this is none. */
const SAME = 0.001;

/**
 * Everything that is worse in a plan with a change than in the plan without, from the two plans alone.
 * Where there was no plan, what only a plan has cannot be worse.
 */
export function worseThan(compared: Compared): RemedyLoss[] {
  const planned = compared.before.document.status === 'planned';
  return [
    ...fewerPieces(compared),
    ...(planned
      ? [
          ...laterCure(compared),
          ...moreSittings(compared),
          ...weakerLinks(compared),
          ...lostGuarantee(compared),
        ]
      : []),
    ...shorterReach(compared),
    ...newRisks(compared).map(({ parts, risk }) => ({
      code: 'remedy.new-risk' as const,
      parts: [...parts],
      risk,
    })),
    ...(planned ? newCautions(compared) : []).map((caution) => ({
      code: 'remedy.new-caution' as const,
      caution,
    })),
  ];
}

function fewerPieces({ before, after }: Compared): RemedyLoss[] {
  const [was, now] = [before, after].map(({ document }) =>
    document.runs.reduce((sum, { count }) => sum + count, 0),
  );
  return now !== undefined && was !== undefined && now < was
    ? [{ code: 'remedy.fewer-pieces', before: was, after: now }]
    : [];
}

function laterCure(compared: Compared): RemedyLoss[] {
  return runPairs(compared).flatMap(({ was, now }): RemedyLoss[] => {
    if (was.ready === null || now.ready === null) return [];
    const later = (end: 'likely' | 'high'): number =>
      minuteOfIso(now.ready?.[end] ?? '') - minuteOfIso(was.ready?.[end] ?? '');
    const run = now.title;
    if (later('likely') > 0) {
      return [{ code: 'remedy.later-cure', run, minutes: later('likely'), likely: now.ready.likely }];
    }
    return later('high') > 0 ? [{ code: 'remedy.later-slow-cure', run, minutes: later('high') }] : [];
  });
}

function moreSittings({ before, after }: Compared): RemedyLoss[] {
  const [was, now] = [before.document, after.document];
  const more = now.sittings.length - was.sittings.length;
  const longer = benchMinutes(now) - benchMinutes(was);
  const [lastWas, last] = [was.sittings.at(-1), now.sittings.at(-1)];
  const ends = lastWas && last ? minuteOfIso(last.endAt) - minuteOfIso(lastWas.endAt) : 0;
  return [
    ...(more > 0
      ? [{ code: 'remedy.more-sittings' as const, before: was.sittings.length, after: now.sittings.length }]
      : []),
    ...(longer > 0 ? [{ code: 'remedy.more-bench-time' as const, minutes: longer }] : []),
    ...(last !== undefined && ends > 0
      ? [{ code: 'remedy.ends-later' as const, minutes: ends, endAt: last.endAt }]
      : []),
  ];
}

/** A stage at which more is lost than before, though less is lost over all. */
function weakerLinks({ before, after }: Compared): RemedyLoss[] {
  const lost = lossesOf(before.document);
  return [...lossesOf(after.document)].flatMap(([id, { run, stage, lost: now }]): RemedyLoss[] => {
    const was = lost.get(id)?.lost ?? 0;
    if (now - was < SAME) return [];
    const shown = after.document.runs.find((each) => each.run === run);
    const title = shown?.stages.find((each) => each.key === stage)?.title;
    const chances = { before: was, after: now };
    return title === undefined
      ? [{ code: 'remedy.day-riskier' as const, run: shown?.title ?? run, ...chances }]
      : [{ code: 'remedy.stage-riskier' as const, stage: title, ...chances }];
  });
}

/** A plan that held whatever the soap does within its bands, and does not with the change. */
function lostGuarantee({ before, after }: Compared): RemedyLoss[] {
  const [was, now] = [before.document.guarantee, after.document.guarantee];
  if (was?.holds !== true || now?.holds !== false) return [];
  return [{ code: 'remedy.holds-no-more', bandPercent: now.bandPercent }];
}

/** What is lost at each stage, in its window and in the bowl together. */
function lossesOf({
  weakLinks,
}: PlanDocument): Map<string, { readonly run: string; readonly stage: string; readonly lost: number }> {
  const found = new Map<string, { readonly run: string; readonly stage: string; readonly lost: number }>();
  for (const { run, stage, attempt, share } of weakLinks) {
    const id = `${run}/${stage}#${String(attempt)}`;
    found.set(id, { run, stage, lost: share + (found.get(id)?.lost ?? 0) });
  }
  return found;
}

/** Batter that stiffens too soon, or a batch that does not reach, more likely than before. */
function shorterReach(compared: Compared): RemedyLoss[] {
  return runPairs(compared).flatMap(({ was, now }) => [
    ...now.filling.flatMap(({ part, chance }) => {
      const before = was.filling.find((each) => each.part === part)?.chance ?? 1;
      const title = now.amounts.find((each) => each.part === part)?.title ?? part;
      return before - chance < SAME
        ? []
        : [{ code: 'remedy.stiffens-sooner' as const, part: title, before, after: chance }];
    }),
    ...now.amounts.flatMap(({ part, title, cover }) => {
      const before = was.amounts.find((each) => each.part === part)?.cover.shortageChance ?? 0;
      return cover.shortageChance - before < SAME
        ? []
        : [{ code: 'remedy.runs-short' as const, part: title, before, after: cover.shortageChance }];
    }),
  ]);
}
