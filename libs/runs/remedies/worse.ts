import type { PlanDocument } from '#contract';
import { localDateOf, localText } from '#hours';
import { minuteOfIso } from '#units';
import { durationText } from '../clocks/duration-text.js';
import { benchMinutes, runPairs, type Compared } from './compared.js';
import { newCautions, newRisks } from './new-risks.js';
import { insteadOf, pieces } from './words.js';

/** A difference in a chance that is below this is none. */
const SAME = 0.001;

/**
 * Everything that is worse in a plan with a change than in the plan without, a sentence each, from the two plans alone.
 * Where there was no plan, what only a plan has cannot be worse.
 */
export function worseThan(compared: Compared): string[] {
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
    ...newRisks(compared).map(({ parts, risk }) => `New for ${parts}: ${risk.text} ${risk.remedy}`),
    ...(planned ? newCautions(compared).map(({ text }) => `New to take care of: ${text}`) : []),
  ];
}

function fewerPieces({ before, after }: Compared): string[] {
  const [was, now] = [before, after].map(({ document }) =>
    document.runs.reduce((sum, { count }) => sum + count, 0),
  );
  return now !== undefined && was !== undefined && now < was
    ? [`${pieces(now)} instead of ${String(was)}.`]
    : [];
}

function laterCure(compared: Compared): string[] {
  return runPairs(compared).flatMap(({ was, now }) => {
    if (was.ready === null || now.ready === null) return [];
    const later = (end: 'likely' | 'high'): number =>
      minuteOfIso(now.ready?.[end] ?? '') - minuteOfIso(was.ready?.[end] ?? '');
    const day = localDateOf(minuteOfIso(now.ready.likely), compared.zone);
    if (later('likely') > 0) {
      return [`“${now.title}” is likely cured ${durationText(later('likely'))} later, about ${day}.`];
    }
    return later('high') > 0
      ? [`“${now.title}” is cured ${durationText(later('high'))} later where the cure is slow.`]
      : [];
  });
}

function moreSittings({ before, after, zone }: Compared): string[] {
  const [was, now] = [before.document, after.document];
  const more = now.sittings.length - was.sittings.length;
  const longer = benchMinutes(now) - benchMinutes(was);
  const [lastWas, last] = [was.sittings.at(-1), now.sittings.at(-1)];
  const ends = lastWas && last ? minuteOfIso(last.endAt) - minuteOfIso(lastWas.endAt) : 0;
  return [
    ...(more > 0
      ? [`${String(now.sittings.length)} sittings instead of ${String(was.sittings.length)}.`]
      : []),
    ...(longer > 0 ? [`${durationText(longer)} more at the bench.`] : []),
    ...(last !== undefined && ends > 0
      ? [`The last sitting ends ${durationText(ends)} later, ${localText(minuteOfIso(last.endAt), zone)}.`]
      : []),
  ];
}

/** A stage at which more is lost than before, though less is lost over all. */
function weakerLinks({ before, after }: Compared): string[] {
  const lost = lossesOf(before.document);
  return [...lossesOf(after.document)].flatMap(([id, { run, stage, lost: now }]) => {
    const was = lost.get(id)?.lost ?? 0;
    if (now - was < SAME) return [];
    const shown = after.document.runs.find((each) => each.run === run);
    const title = shown?.stages.find((each) => each.key === stage)?.title;
    const where = title === undefined ? `the day of “${shown?.title ?? run}”` : `“${title}”`;
    return [`More is lost at ${where}: ${insteadOf(now, was)}.`];
  });
}

/** A plan that held whatever the soap does within its bands, and does not with the change. */
function lostGuarantee({ before, after }: Compared): string[] {
  const [was, now] = [before.document.guarantee, after.document.guarantee];
  if (was?.holds !== true || now?.holds !== false) return [];
  const reasons = now.reasons.map(({ text }) => text).join(' ');
  return [
    `Hours and bowl aside, it no longer holds whatever the soap does within its ${String(now.bandPercent)} % bands. ${reasons}`,
  ];
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
function shorterReach(compared: Compared): string[] {
  return runPairs(compared).flatMap(({ was, now }) => [
    ...now.filling.flatMap(({ part, chance }) => {
      const before = was.filling.find((each) => each.part === part)?.chance ?? 1;
      const title = now.amounts.find((each) => each.part === part)?.title ?? part;
      return before - chance < SAME
        ? []
        : [`The batter of “${title}” leaves less time: ${insteadOf(chance, before)} to do all pieces.`];
    }),
    ...now.amounts.flatMap(({ part, title, cover }) => {
      const before = was.amounts.find((each) => each.part === part)?.cover.shortageChance ?? 0;
      return cover.shortageChance - before < SAME
        ? []
        : [`“${title}” runs short more likely: ${insteadOf(cover.shortageChance, before)}.`];
    }),
  ]);
}
