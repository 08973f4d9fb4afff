import type { DisturbanceCause, RemediesNote, RemedyMessage } from '#contract';
import { spanText } from '../format/spans.js';
import type { MessageWords, Texts } from '../words.js';

/** What disturbs, as names in a list. */
const disturbances: MessageWords<DisturbanceCause> = {
  'disturbance.any-change': () => 'any change at all',
  'disturbance.moved-stages': ({ moved }, texts) =>
    moved === 1 ? '1 stage moves' : `${texts.number(moved)} stages move`,
  'disturbance.sittings': ({ more }, texts) =>
    `${texts.number(more)} more ${more === 1 ? 'sitting' : 'sittings'}`,
  'disturbance.bench-time': ({ minutes }, texts) => `${texts.duration(minutes)} longer at the bench`,
  'disturbance.later-cure': ({ minutes }, texts) => `cured ${texts.duration(minutes)} later`,
  'disturbance.new-risk': ({ parts }, texts) => `a new risk for ${quoted(parts, texts)}`,
  'disturbance.moulds': () => 'moulds to buy',
  'disturbance.fewer-pieces': ({ fewer }, texts) => `${pieces(fewer, texts)} fewer`,
  'disturbance.without-parts': ({ parts }, texts) => `pieces without ${quoted(parts, texts)}`,
  'disturbance.day-given-up': () => 'a promised day given up',
  'disturbance.recipe': () => 'a changed recipe to weigh',
  'disturbance.outside-hours': ({ minutes }, texts) => `${texts.duration(minutes)} outside your hours`,
  'disturbance.batches-twice': () => 'every batch twice',
};

const notes: MessageWords<RemediesNote> = {
  'remedies.nothing-lost': () => 'No change needed. There is nothing to win back.',
  'remedies.nothing-to-try': () => 'There is nothing left to change.',
  'remedies.none-gains': ({ tried }, texts) => `${tries(tried, texts)} None helps more than luck would.`,
  'remedies.none-enough': ({ tried }, texts) =>
    `${tries(tried, texts)} None makes a plan possible by itself.`,
  'remedies.sorted': ({ tried }, texts) =>
    `${tries(tried, texts)} The first one helps most for the least trouble.`,
  'remedies.time-up': () => 'Time was up before all changes were tried. There may be better ones.',
};

/** What remedies are, and what they make better and worse. */
export const remedies: MessageWords<RemedyMessage> = {
  ...disturbances,
  ...notes,
  'remedy.buy-moulds': ({ mould, before, after }, texts) =>
    `Get more of ${texts.quoted(mould)}: ${texts.number(after)} cavities instead of ${texts.number(before)}`,
  'remedy.make-fewer': ({ run, before, after }, texts) =>
    `Make ${pieces(after, texts)} of ${texts.quoted(run)} instead of ${texts.number(before)}`,
  'remedy.leave-out': ({ run, parts }, texts) => `Leave ${quoted(parts, texts)} out of ${texts.quoted(run)}`,
  'remedy.plan-anew': () => 'Plan from scratch, and let any stage move',
  'remedy.later-day': ({ run, before, after }, texts) =>
    `Promise ${texts.quoted(run)} for ${texts.calendarDay(after)} instead of ${texts.calendarDay(before)}`,
  'remedy.change-recipe': ({ recipe, lyePercent: lye, sodiumLactatePercent: lactate }, texts) => {
    const instead = ({ before, after }: { readonly before: number; readonly after: number }): string =>
      `${texts.percent(after)} instead of ${texts.percent(before)}`;
    const changes = [
      ...(lye === undefined
        ? []
        : [`${lye.after > lye.before ? 'less' : 'more'} water (lye ${instead(lye)})`]),
      ...(lactate === undefined
        ? []
        : [`${lactate.after > lactate.before ? 'more' : 'less'} sodium lactate (${instead(lactate)})`]),
    ];
    return `Change ${texts.quoted(recipe)}: ${texts.and(changes)}`;
  },
  'remedy.add-sitting': (span, texts) => `One more sitting: ${spanText(span, texts)}`,
  'remedy.longer-sitting': (span, texts) => `A longer sitting: ${spanText(span, texts)}`,
  'remedy.split': ({ run, first, rest }, texts) =>
    `Make ${texts.quoted(run)} in two runs: ${pieces(first, texts)} and ${texts.number(rest)}`,
  'remedy.begin-later': ({ run, at }, texts) => `Begin ${texts.quoted(run)} later: ${texts.dayTime(at)}`,
  'remedy.begin-earlier': ({ run, at }, texts) => `Begin ${texts.quoted(run)} earlier: ${texts.dayTime(at)}`,

  'remedy.makes-plan': ({ odds }, texts) => `Makes a plan possible. Odds: ${texts.odds(odds)}.`,
  'remedy.better-odds': ({ before, after }, texts) => `Odds: ${texts.oddsInstead(after, before)}.`,
  'remedy.holds-within': ({ bandPercent }, texts) =>
    `Holds unless the soap is among the slowest or fastest ${outerShare(bandPercent, texts)}.`,
  'remedy.earlier-cure': ({ run, minutes }, texts) =>
    `${texts.quoted(run)} is likely cured ${texts.duration(minutes)} earlier.`,
  'remedy.fewer-sittings': ({ fewer }, texts) =>
    fewer === 1 ? 'One sitting fewer.' : `${texts.number(fewer)} sittings fewer.`,

  'remedy.price-of-moulds': () => 'You have to buy the moulds. Their price is not counted here.',
  'remedy.pieces-without': ({ parts }, texts) => `The pieces come without ${quoted(parts, texts)}.`,
  'remedy.no-time-for': ({ stages }, texts) =>
    `The plan keeps no time for ${quoted(stages, texts)} any more.`,
  'remedy.nothing-ready': ({ run, readyBy }, texts) =>
    `Nothing of ${texts.quoted(run)} to sell on ${texts.calendarDay(readyBy)}.`,
  'remedy.outside-hours': (span, texts) => `Work outside your hours: ${spanText(span, texts)}.`,
  'remedy.mixed-twice': () =>
    'You mix every batch twice, so you handle lye twice. Bowls and bags are washed twice.',
  'remedy.fewer-pieces': ({ before, after }, texts) =>
    `${pieces(after, texts)} instead of ${texts.number(before)}.`,
  'remedy.later-cure': ({ run, minutes, likely }, texts) =>
    `${texts.quoted(run)} is likely cured ${texts.duration(minutes)} later, about ${texts.day(likely)}.`,
  'remedy.later-slow-cure': ({ run, minutes }, texts) =>
    `If the cure is slow, ${texts.quoted(run)} is ready ${texts.duration(minutes)} later.`,
  'remedy.more-sittings': ({ before, after }, texts) =>
    `${texts.number(after)} sittings instead of ${texts.number(before)}.`,
  'remedy.more-bench-time': ({ minutes }, texts) => `${texts.duration(minutes)} more at the bench.`,
  'remedy.ends-later': ({ minutes, endAt }, texts) =>
    `The last sitting ends ${texts.duration(minutes)} later: ${texts.dayTime(endAt)}.`,
  'remedy.stage-riskier': ({ stage, before, after }, texts) =>
    `More runs go wrong at ${texts.quoted(stage)}: ${texts.oddsInstead(after, before)}.`,
  'remedy.day-riskier': ({ run, before, after }, texts) =>
    `${texts.quoted(run)} is late more often: ${texts.oddsInstead(after, before)}.`,
  'remedy.holds-no-more': ({ bandPercent }, texts) =>
    `If the soap is among the slowest or fastest ${outerShare(bandPercent, texts)}, this plan may break.`,
  'remedy.new-risk': ({ parts, risk }, texts) =>
    `New for ${quoted(parts, texts)}: ${texts.of(risk)} ${texts.remedyOf(risk)}`,
  'remedy.new-caution': ({ caution }, texts) => `Take care. ${texts.of(caution)}`,
  'remedy.stiffens-sooner': ({ part, before, after }, texts) =>
    `The batter of ${texts.quoted(part)} stiffens sooner. It stays soft for all pieces ${texts.oddsInstead(after, before)}.`,
  'remedy.runs-short': ({ part, before, after }, texts) =>
    `${texts.quoted(part)} runs short more often: ${texts.oddsInstead(after, before)}.`,
  'remedy.costs-more': ({ amount, currency, complete }, texts) =>
    `Materials cost ${texts.money(amount, currency)} more${pricesKnown(complete)}.`,

  'remedy.weigh-anew': () => 'Weigh by the new batch sheet, not by the old one.',
  'remedy.stages-move': ({ run, moved }, texts) =>
    `${texts.quoted(run)}: ${moved === 1 ? '1 stage moves' : `${texts.number(moved)} stages move`}.`,
  'remedy.other-amounts': ({ materials, more }, texts) => {
    const changes = materials.map(({ key, title, unit, before, after }) => {
      const text = (amount: number): string => (unit === 'g' ? texts.mass(amount) : pieces(amount, texts));
      return `${texts.titled(key, title)} ${text(after)} instead of ${text(before)}`;
    });
    const others = more === 0 ? '' : ` (and ${texts.number(more)} more)`;
    return `Weigh other amounts: ${changes.join('; ')}${others}.`;
  },
  'remedy.costs-less': ({ amount, currency, complete }, texts) =>
    `Materials cost ${texts.money(amount, currency)} less${pricesKnown(complete)}.`,
};

function pieces(count: number, texts: Texts): string {
  return texts.pieces(texts.number(count, 0), Math.round(count) === 1);
}

function quoted(titles: readonly string[], texts: Texts): string {
  return texts.and(titles.map((title) => texts.quoted(title)));
}

/** What lies beyond a band at each end. */
function outerShare(bandPercent: number, texts: Texts): string {
  return texts.percent((100 - bandPercent) / 2);
}

function pricesKnown(complete: boolean): string {
  return complete ? '' : ', as far as prices are known';
}

function tries(tried: number, texts: Texts): string {
  return tried === 1 ? 'Tried 1 change.' : `Tried ${texts.number(tried, 0)} changes.`;
}
