import type { SoapState } from '#contract';
import type {
  ClockIssues,
  CureIssues,
  DesignIssues,
  Issue,
  LogIssues,
  PhotoIssues,
  PlanIssues,
  RunIssues,
  StockIssues,
} from '#units';
import type { IssueWordsOf, Said, Texts } from '../../words.js';

type Codes = keyof (ClockIssues &
  CureIssues &
  DesignIssues &
  LogIssues &
  PhotoIssues &
  PlanIssues &
  RunIssues &
  StockIssues);

/** “There is no mould “cup”.” */
const noSuch =
  (what: string) =>
  ({ value, known }: Unknown, { quoted }: Texts): Said =>
    known.length === 0
      ? `There is no ${what} ${quoted(String(value))}, and none at all yet.`
      : `There is no ${what} ${quoted(String(value))}.`;

interface Unknown {
  readonly value?: unknown;
  readonly known: readonly string[];
}

const confirm = 'If the scales really say so, confirm it.';

/** What the clocks read. */
const inputName = ({ names }: Texts, input: string): string =>
  names.inputs[input as keyof Texts['names']['inputs']];

const stateIs = ({ names }: Texts, state: string): string => names.states[state as SoapState].is;

/** `2026-11-27T18:00`, by the clock on the wall. */
const wallTime = ({ calendarDay }: Texts, local: string): string =>
  `${calendarDay(local.slice(0, 10))}, ${local.slice(11)}`;

export const runIssues: IssueWordsOf<Codes> = {
  'design.unknown': noSuch('design'),
  'recipe.unknown': noSuch('recipe'),
  'mould.unknown': noSuch('mould'),
  'part.unknown': noSuch('part'),
  'stage.unknown': noSuch('stage'),
  'equipment.unknown': noSuch('equipment'),
  'run.unknown': noSuch('run'),
  'group.unknown': noSuch('group'),
  'change.no-such-run': noSuch('run'),
  'change.no-such-recipe': noSuch('recipe'),
  'change.no-such-mould': noSuch('mould'),
  'design.making-stage': ({ title, count }, { quoted, number }) =>
    `${quoted(title)} is made in ${number(count, 0)} stages. Make it in just one: pour, layer, dip, pipe, glaze or press it.`,
  'design.wait-without-making': ({ title }, { quoted }) =>
    `No stage makes ${quoted(title)}, so there is nothing to wait for. Add the stage, or take the wait out.`,
  'design.no-hands-on': () =>
    'No stage takes any time at the bench. Enter how long the work takes, or leave it out and take what is usual.',
  'design.firmness-refused': ({ title }, { quoted }) =>
    `${quoted(title)} has to wait until the soap is firm. If you know the time better, give hours of your own after the pour.`,
  'design.state-without-clock': ({ title, states }, { quoted }) =>
    states.length === 0
      ? `${quoted(title)} does not set. Use a wait by the clock instead.`
      : `${quoted(title)} never comes into this state.`,
  'design.cavity-overfull': ({ mould, filledMl, holdsMl }, { quoted, volume }) => ({
    wrong: `The parts in one cavity of ${quoted(mould)} come to ${volume(filledMl)}, and it holds ${volume(holdsMl)}. Take less of one.`,
    isWhole: true,
  }),
  'design.batch-recipes': ({ titles }, { quoted, and }) =>
    `${and(titles.map(quoted))} are mixed at once, so they need the same recipe. Choose one, or mix them apart.`,
  'design.batch-needs-mix': ({ titles }, { quoted, and }) =>
    `${and(titles.map(quoted))} come from one batch. Add a stage that mixes it: from then on they stiffen together.`,
  'design.cook-needs-test': ({ title }, { quoted }) =>
    `Lye that cooking left in ${quoted(title)} stays there. Add a stage that tests it for lye.`,
  'design.cavities-differ': ({ titles }, { quoted, and }) =>
    `${and(titles.map(quoted))} share their cavities, so a piece takes as many for the one as for the other.`,
  'design.mould-never-freed': ({ title }, { quoted }) =>
    `${quoted(title)} goes into a mould and never comes out. Add a stage that unmoulds it.`,
  'design.circular-links': ({ way }, { quoted, and }) =>
    `${and(way.slice(0, -1).map(quoted))} wait for each other in a circle. Take one of these waits out.`,

  'workshop.unknown-time-zone': ({ value }, { quoted }) =>
    `${quoted(String(value))} is no time zone. Choose one such as Europe/Dublin.`,
  'hours.never-open': () =>
    'These hours never open, so nothing can be done. Give at least one span in the week.',
  'library.key-changed': ({ key }, { quoted }) =>
    `Keep the short name ${quoted(key)}: other things refer to it.`,
  'run.ready-before-start': ({ readyBy, startAfter }, texts) =>
    `Ready by ${texts.calendarDay(readyBy)} is before the start (${wallTime(texts, startAfter)}). Choose a later day.`,
  'run.groups-sum': ({ sum, count }, { inUnit, number }) => ({
    wrong: `The groups have ${inUnit(sum, 'pieces')}, the run ${number(count, 0)}. Make them the same.`,
    isWhole: true,
  }),
  'run.group-part-twice': ({ group, part }, { quoted }) =>
    `${quoted(part)} stands twice in ${quoted(group)}. Name it once.`,
  'run.group-without-host': ({ group, part }, { quoted }) =>
    `In ${quoted(group)} there is nothing to put ${quoted(part)} on. Add the part that carries it, or leave this one out.`,
  'run.key-repeated': ({ value }, { quoted }) => `There is another run ${quoted(String(value))}.`,
  'run.start-too-far': ({ startAfter }, texts) =>
    `${wallTime(texts, startAfter)} is too far ahead to plan for. Start within two years.`,
  'run.begun': ({ title }, { quoted }) =>
    `${quoted(title)} has begun, so its latest start is past. Choose one that has not.`,
  'run.which': ({ known }, { or, quoted }) => `Say which run: ${or(known.map(quoted))}.`,
  'run.no-day': () => 'Ready by when? Give a day within two years.',
  'run.day-out-of-range': ({ day }, { calendarDay }) =>
    `${calendarDay(day)} cannot be planned for. Give a day to come, within two years.`,
  'run.no-such-day': () => 'There is no such day. Give a day to come, within two years.',
  'plan.too-large': ({ stages, most }, { number }) =>
    `These runs have ${number(stages, 0)} stages together. At most ${number(most, 0)} are planned at once.`,
  'plan.pins-impossible': () => 'No plan has these stages at these times. Put them elsewhere.',
  'plan.potash': ({ recipe, percent }, { quoted, inUnit }) => ({
    wrong: `${quoted(recipe)} has ${inUnit(percent, '%')} of its lye as potassium hydroxide. That makes a soft paste, whose times are not forecast, so no run of it can be planned.`,
    why: 'Its amounts can still be worked out.',
  }),
  'plan.undecided': () =>
    'No plan with these stages at these times was found in time. Put them elsewhere, or try again.',

  'clocks.out-of-range': ({ input, found, unit }, texts) =>
    `The ${inputName(texts, input)} is ${texts.inUnit(found, unit)}.`,
  'clocks.unknown-choice': ({ input, value }, texts) =>
    `${texts.quoted(String(value))} is no ${inputName(texts, input)}.`,
  'clocks.more-than-whole': ({ inputs, sum }, texts) => ({
    wrong: `Together the ${texts.and(inputs.map((input) => inputName(texts, input)))} make ${texts.inUnit(sum, '%')}. They are shares of one whole.`,
    isWhole: true,
  }),
  'clocks.batter-colder-than-room': ({ batterC, roomC }, { temperature }) =>
    `The batter is at ${temperature(batterC)}, far colder than the room at ${temperature(roomC)}.`,
  'cure.too-few-weighings': ({ count }, { number }) =>
    `There are ${number(count, 0)} weigh-ins. Weigh the same pieces at least twice.`,
  'cure.day-out-of-range': ({ value }, { number }) => `${number(Number(value))} is no day of a cure.`,
  'cure.mass-out-of-range': ({ value }, { mass }) => `${mass(Number(value))} is no weight of soap.`,
  'cure.water-share-out-of-range': ({ value }, { number }) =>
    `${number(Number(value), 3)} is no share of water.`,
  'cure.scale-out-of-range': ({ value }, { mass }) => `Scales are not off by ${mass(Number(value))}.`,
  'cure.mass-gained': ({ massG, mostG }, { mass }) => ({
    wrong: `${mass(massG)} is more than an earlier weigh-in allows: at most ${mass(mostG)}. Damp air, or not the same pieces?`,
    isWhole: true,
  }),
  'cure.lost-more-than-water': ({ massG, leastG }, { mass }) => ({
    wrong: `${mass(massG)} is less than is left when all the water has gone: at least ${mass(leastG)}. Not the same pieces?`,
    isWhole: true,
  }),

  'log.time-doubtful': ({ title, state, saw, afterMin, leastMin, mostMin }, texts) => {
    const [part, is, after] = [texts.quoted(title), stateIs(texts, state), texts.duration(afterMin)];
    const expected = texts.range(texts.duration(leastMin), texts.duration(mostMin));
    const wrong =
      saw === 'not-yet'
        ? `${part} not “${is}” after ${after}? At most ${texts.duration(mostMin)} was expected.`
        : `${part} “${is}” after ${after}? ${expected} was expected.`;
    return { wrong, why: 'If it was so, confirm it; if not, correct the time.' };
  },
  'log.state-without-clock': ({ title, state }, texts) =>
    `${texts.quoted(title)} is never “${stateIs(texts, state)}”. Choose another state.`,
  'log.clock-not-started': ({ state, stage }, texts) =>
    stage === undefined
      ? `When was the lye added? “${stateIs(texts, state)}” counts from there.`
      : `Log ${texts.quoted(stage)} first: “${stateIs(texts, state)}” counts from there.`,
  'log.before-clock': ({ at }, { dayTime }) =>
    `${dayTime(at)} is before the soap was made. Give a later time.`,
  'log.ends-before-start': ({ startedAt, at }, { dayTime }) => ({
    wrong: `It cannot begin at ${dayTime(startedAt)} and be done at ${dayTime(at)}. Correct one of the two.`,
    isWhole: true,
  }),
  'log.out-of-order': ({ title, missing }, { quoted, and }) =>
    `Log ${and(missing.map(quoted))} first: ${quoted(title)} comes after.`,
  'log.nothing-to-wait-for': ({ title }, { quoted }) =>
    `${quoted(title)} waits for no soap yet: none of it is made.`,
  'log.already-done': ({ title }, { quoted }) => `${quoted(title)} is already done.`,
  'log.cure-not-begun': ({ at, stage }, { dayTime, quoted }) =>
    stage === undefined
      ? 'Nothing of this run cures.'
      : `Nothing of this run cures at ${dayTime(at)}. Log ${quoted(stage)} first.`,
  'log.weigh-in-doubtful': ({ massG, pieces, expectedEachG }, { mass, inUnit }) => ({
    wrong:
      `${mass(massG)} for ${inUnit(pieces, 'pieces')} is ${mass(massG / pieces)} each; about ${mass(expectedEachG)} was expected. ` +
      'Is it a slip?',
    why: confirm,
  }),
  'log.weighing-implausible': ({ title, usedG, pieces, expectedG }, { mass, inUnit, quoted }) => ({
    wrong: `${mass(usedG)} of ${quoted(title)} for ${inUnit(pieces, 'pieces')} is far from the ${mass(expectedG)} expected. Is it a slip?`,
    why: confirm,
  }),
  'log.not-made': ({ title, stage }, { quoted }) =>
    `${quoted(title)} is not made yet. Log ${quoted(stage)} first.`,
  'log.more-than-made': ({ made, pieces }, { inUnit, number }) =>
    `It was made for ${inUnit(made, 'pieces')}, not for ${number(pieces, 0)}.`,
  'log.dropped-of-one-group': ({ title, group }, { quoted }) =>
    `Other groups have ${quoted(title)} too, so it cannot be left out of ${quoted(group)} alone. Leave it out of all, or carry on.`,
  'log.needed-later': ({ because }, texts) =>
    `Take the later entries back first. Without this one: ${texts.issue(because as Issue)}`,
  'log.unknown-entry': ({ known }) =>
    known.length === 0
      ? 'There is no entry to take back.'
      : 'This entry is not in the log, or was taken back.',
  'log.in-the-future': ({ at }, { dayTime }) => `${dayTime(at)} has not come yet.`,
  'log.long-ago': ({ at }, { dayTime }) => `${dayTime(at)} is long before the run.`,
  'photo.no-jpeg': () => 'This is not a picture that can be kept.',
  'photo.too-large': ({ side }, { number }) => `This picture is ${number(side, 0)} pixels long.`,
  'photo.no-room': ({ of, mostMb }, { number }) =>
    of === 'run'
      ? `There is no room for another photo: this run has ${number(mostMb, 0)} MB of them already. Take back a note with photos you can do without.`
      : `There is no room for another photo: there are ${number(mostMb, 0)} MB of them already.`,
  'photo.id-taken': () => 'This photo was sent before, with another picture in it.',
  'photo.unknown': () => 'This run has no such photo.',
  'stock.unknown-entry': () => 'There is no such entry in the stock, or it was taken back.',
  'stock.leftover-short': ({ title, leftG }, { mass, quoted }) =>
    `${mass(leftG)} of ${quoted(title)} is left. Use that or less.`,
  'stock.needed-later': () => 'Something was used of this later. Take that back first.',
  'stock.other-unit': ({ title, unit }, { quoted }) =>
    unit === 'g'
      ? `${quoted(title)} is kept by weight. Give grams.`
      : `${quoted(title)} is kept by the piece. Give pieces.`,
  'stock.id-taken': () => 'This entry was sent before, with something else in it.',
};
