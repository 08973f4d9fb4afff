import type { RemedyEffects } from '#contract';
import { minuteOfIso } from '#units';
import { durationText } from '../clocks/duration-text.js';
import type { Compared } from './compared.js';
import { insteadOf, share } from './words.js';

/** Materials that are told by name; the rest is counted. */
const TOLD_MATERIALS = 4;

/** What becomes better, in a sentence or two. */
export function tellGain({ odds, runs, sittings }: RemedyEffects, { before: had, after }: Compared): string {
  const { before, after: now, gain, standardError } = odds;
  const head =
    before === null
      ? `There is a plan with this, with odds of ${share(now)}.`
      : `Odds ${insteadOf(now, before)}: ${points(gain)} ± ${points(standardError)} points more.`;
  const earlier = runs.flatMap(({ run, readyAt }) => {
    if (readyAt.before === null || readyAt.after === null) return [];
    const minutes = minuteOfIso(readyAt.before) - minuteOfIso(readyAt.after);
    const title = after.document.runs.find((each) => each.run === run)?.title ?? run;
    return minutes >= 720 ? [`“${title}” is likely cured ${durationText(minutes)} earlier.`] : [];
  });
  const fewer = sittings.before === null ? 0 : sittings.before - sittings.after;
  const [was, holds] = [had, after].map(({ document }) => document.guarantee?.holds === true);
  return [
    head,
    ...(holds === true && was === false
      ? ['Hours and bowl aside, it then holds whatever the soap does within its bands.']
      : []),
    ...earlier,
    ...(fewer > 0 ? [`${fewer === 1 ? 'One sitting' : `${String(fewer)} sittings`} fewer.`] : []),
  ].join(' ');
}

/** Materials that cost more with a change. */
export function tellCost({ materialCost }: RemedyEffects): { worse: string[]; also: string[] } {
  if (materialCost === undefined) return { worse: [], also: [] };
  const { before, after, currency = '', complete } = materialCost;
  const more = after - before;
  if (Math.abs(more) < 0.005) return { worse: [], also: [] };
  const partly = complete ? '' : ', as far as prices are known';
  const text = (what: string): string =>
    `Materials cost ${Math.abs(more).toFixed(2)} ${currency} ${what}${partly}.`;
  return more > 0 ? { worse: [text('more')], also: [] } : { worse: [], also: [text('less')] };
}

/** What else changes: stages that move, and amounts to weigh. */
export function tellBesides({ runs, materials }: RemedyEffects, { after }: Compared): string[] {
  const moved = runs.flatMap(({ run, moved }) => {
    const title = after.document.runs.find((each) => each.run === run)?.title ?? run;
    const stages = moved === 1 ? '1 stage' : `${String(moved)} stages`;
    return moved === 0 ? [] : [`“${title}”: ${stages} at other times than planned.`];
  });
  const largest = [...materials]
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before))
    .slice(0, TOLD_MATERIALS)
    .map(({ title, unit, before, after }) => {
      const text = (amount: number): string =>
        unit === 'g' ? `${amount.toFixed(1)} g` : `${String(Math.round(amount))} pieces`;
      return `${title} ${text(after)} instead of ${text(before)}`;
    });
  const rest = materials.length - largest.length;
  const others = rest > 0 ? `; ${String(rest)} more change` : '';
  return [...moved, ...(largest.length === 0 ? [] : [`Amounts: ${largest.join('; ')}${others}.`])];
}

/** A share as percentage points. */
function points(value: number): string {
  return (100 * value).toFixed(1);
}
