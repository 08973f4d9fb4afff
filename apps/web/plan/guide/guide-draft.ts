import type { Hours, PlanInput, RunOrder, Span } from '#contract';
import type { Group, Value } from '../../form/values.js';
import { newKey } from '../../library/new-key.js';
import type { LocalTime } from '../local-times.js';

export const steps = ['mould', 'recipe', 'hours', 'start'] as const;
export type Step = (typeof steps)[number];
export type Day = keyof Hours['weekly'];

/** Names under which each part is saved: the same call twice makes one thing. */
export interface Once {
  readonly mould: string;
  readonly recipe: string;
  readonly design: string;
  readonly run: string;
}

/** What was described so far. Mould and recipe as the contract has them, without key, with what is missing missing. */
export interface GuideDraft {
  readonly mould: Group;
  readonly recipe: Group;
  readonly perCavity: number;
  /** Days that differ from the workshop's: one stretch, or none. */
  readonly days: Readonly<Partial<Record<Day, Span | null>>>;
  /** null: as many as the cavities hold. */
  readonly count: number | null;
  readonly startAfter: LocalTime;
  /** Keys of what was saved already, when saving was cut short. */
  readonly made: Readonly<Partial<Record<keyof Once, string>>>;
  readonly once: Once;
}

/** Mixes to begin with. Common practice, no source. */
export const presets = {
  balanced: [
    { fat: 'olive', percent: 45 },
    { fat: 'coconut', percent: 25 },
    { fat: 'palm', percent: 25 },
    { fat: 'castor', percent: 5 },
  ],
  'no-palm': [
    { fat: 'olive', percent: 50 },
    { fat: 'coconut', percent: 25 },
    { fat: 'shea-butter-refined', percent: 20 },
    { fat: 'castor', percent: 5 },
  ],
  olive: [
    { fat: 'olive', percent: 75 },
    { fat: 'coconut', percent: 20 },
    { fat: 'castor', percent: 5 },
  ],
} as const;

/** What mould and soap are called until they are called something else. */
export interface FirstNames {
  readonly mould: string;
  readonly soap: string;
}

/** @param uuid makes a new one at each call */
export function emptyGuide(now: LocalTime, names: FirstNames, uuid: () => string): GuideDraft {
  return {
    mould: { title: names.mould, kind: 'silicone-cavity' },
    // Lye of 33 %, 5 % superfat: common practice, no source.
    recipe: {
      title: names.soap,
      fats: [...presets.balanced],
      lyeConcentrationPercent: 33,
      superfatPercent: 5,
    },
    ...{ perCavity: 1, days: {}, count: null, startAfter: now, made: {} },
    once: { mould: uuid(), recipe: uuid(), design: uuid(), run: uuid() },
  };
}

/** What was kept, with a start that has not passed. */
export function revivedGuide(
  text: string | null,
  now: LocalTime,
  names: FirstNames,
  uuid: () => string,
): GuideDraft {
  const empty = emptyGuide(now, names, uuid);
  try {
    const kept = { ...empty, ...(JSON.parse(text ?? '{}') as Partial<GuideDraft>) };
    return { ...kept, startAfter: kept.startAfter < now ? now : kept.startAfter };
  } catch {
    return empty;
  }
}

/** The draft with one part of it changed: what was saved of that part, and of what is built on it, no longer is. */
export function withPart(
  draft: GuideDraft,
  part: 'mould' | 'recipe',
  content: Group,
  uuid: () => string,
): GuideDraft {
  const { [part]: _gone, design: _built, ...made } = draft.made;
  return { ...draft, [part]: content, made, once: { ...draft.once, [part]: uuid(), design: uuid() } };
}

type Keyed = Group & { readonly key: string };

/** Everything the draft comes to, not yet checked: what goes to the API, and to the planner beside it. */
export interface GuideContents {
  readonly mould: Keyed;
  readonly recipe: Keyed;
  readonly design: Keyed;
  readonly order: RunOrder;
}

/** @param words names of what the guide makes up */
export function contentsOf(
  draft: GuideDraft,
  input: PlanInput,
  takenRuns: readonly string[],
  words: { readonly part: string; readonly pour: string; readonly unmould: string; readonly cut: string },
): GuideContents {
  const { made, perCavity } = draft;
  const title = textOf(draft.recipe['title']);
  const keyOf = (name: string, list: readonly { readonly key: string }[]): string =>
    newKey(
      name,
      list.map(({ key }) => key),
    );
  const mould = made.mould ?? keyOf(textOf(draft.mould['title']), input.moulds);
  const recipe = made.recipe ?? keyOf(title, input.recipes);
  const design = made.design ?? keyOf(title, input.designs);
  const isCut = perCavity > 1;
  // Hands-on times: common practice, no source.
  const stages = [
    { key: 'pour', title: words.pour, kind: 'pour', part: 'soap', setupMin: 40, perPieceS: 6 },
    {
      key: 'unmould',
      title: words.unmould,
      kind: 'unmould',
      part: 'soap',
      setupMin: 10,
      perPieceS: isCut ? 0 : 15,
    },
    ...(isCut
      ? [{ key: 'cut', title: words.cut, kind: 'cut', part: 'soap', setupMin: 10, perPieceS: 30 }]
      : []),
  ];
  return {
    mould: { ...draft.mould, key: mould },
    recipe: { ...draft.recipe, key: recipe },
    design: {
      ...{ key: design, title, stages },
      parts: [
        {
          ...{ kind: 'batch', key: 'soap', title: words.part, recipe, mould, piecesPerCavity: perCavity },
          amount: { by: 'cavity', fillPercent: 100 },
        },
      ],
      links: isCut ? [{ from: 'unmould', to: 'cut', atMostMin: 240 }] : [],
      waits: isCut
        ? [
            { stage: 'unmould', part: 'soap', opens: 'cuttable' },
            { stage: 'cut', part: 'soap', closes: 'cuttable-until' },
          ]
        : [{ stage: 'unmould', part: 'soap', opens: 'firm' }],
    },
    order: {
      ...{
        key: newKey(title, takenRuns),
        title,
        design,
        count: countOf(draft),
        startAfter: draft.startAfter,
      },
      certaintyPercent: 95,
    },
  };
}

/** Pieces to make. */
export function countOf(draft: GuideDraft): number {
  return Math.min(draft.count ?? Infinity, mostOf(draft));
}

/** Pieces that all cavities are enough for. */
export function mostOf({ mould, perCavity }: GuideDraft): number {
  const { cavities } = mould;
  return typeof cavities === 'number' && cavities >= 1 ? Math.floor(cavities) * perCavity : 1;
}

/** The week with the days that were changed. */
export function weekOf(draft: GuideDraft, weekly: Hours['weekly']): Hours['weekly'] {
  const changed = Object.entries(draft.days).map(
    ([day, span]) => [day, span === null ? [] : [span]] as const,
  );
  return { ...weekly, ...Object.fromEntries(changed) };
}

function textOf(value: Value): string {
  return typeof value === 'string' ? value.trim() : '';
}
