import type { PartKind, StageKind } from '#contract/names';
import { listAt, textAt, valueAt, withItem, withoutItem, withValue, type Value } from '../../form/values.js';
import { castParts, placeOf, withStageIn } from './patterns/additions.js';
import type { PieceTitles } from './patterns/piece-titles.js';

/** Kinds of stages that can make a part of each kind; the first unless the maker chooses otherwise. */
const makingKinds: Readonly<Record<PartKind, readonly [StageKind, ...StageKind[]]>> = {
  batch: ['pour', 'layer', 'dip', 'pipe'],
  'melt-and-pour': ['glaze', 'pour', 'layer'],
  decor: ['press-decor'],
};

const freshParts: Readonly<Record<PartKind, object>> = {
  batch: {},
  'melt-and-pour': {},
  decor: { perPiece: 1 },
};

/** A part under another title. Stages that are called after it are called after it still. */
export function withPartTitle(
  design: Value,
  index: number,
  title: string | undefined,
  titles: PieceTitles,
): Value {
  const part = valueAt(design, ['parts', index]);
  const before = textAt(part, ['title']);
  const stages = listAt(design, ['stages']).map((stage) => {
    const kind = valueAt(stage, ['kind']) as StageKind;
    const isAfterIt =
      valueAt(stage, ['part']) === valueAt(part, ['key']) &&
      textAt(stage, ['title']) === titles.stage(kind, before);
    return isAfterIt ? withValue(stage, ['title'], titles.stage(kind, title ?? '')) : stage;
  });
  return withValue(withValue(design, ['parts', index, 'title'], title), ['stages'], stages);
}

/** A part of another kind: its name stays, the rest is the new kind's, and it is made in a stage that fits it. */
export function withPartKind(design: Value, index: number, kind: PartKind, titles: PieceTitles): Value {
  const { key, title } = (valueAt(design, ['parts', index]) ?? {}) as { readonly [name: string]: Value };
  const made = withValue(design, ['parts', index], { key, title, kind, ...freshParts[kind] });
  const makes = Object.values(makingKinds).flat();
  return listAt(made, ['stages']).reduce<Value>((before, stage, i) => {
    const now = valueAt(stage, ['kind']) as StageKind;
    const isUnfit =
      valueAt(stage, ['part']) === key && makes.includes(now) && !makingKinds[kind].includes(now);
    return isUnfit ? withStageKind(before, i, makingKinds[kind][0], titles) : before;
  }, made);
}

/** The design without a part, the stages that make or handle it, and all that waits for it. */
export function withoutPart(design: Value, index: number): Value {
  const key = valueAt(design, ['parts', index, 'key']);
  const bare = withoutItem(design, ['parts'], index);
  const positions = listAt(bare, ['stages']).flatMap((stage, i) =>
    valueAt(stage, ['part']) === key ? [i] : [],
  );
  const left = positions.reverse().reduce(withoutStage, bare);
  const isOfIt = (each: Value): boolean => valueAt(each, ['part']) === key;
  const quiet = ['waits', 'without'].reduce((before, list) => keeping(before, list, isOfIt), left);
  return listAt(quiet, ['stages']).reduce<Value>(
    (before, stage, i) =>
      valueAt(stage, ['onto']) === key ? withValue(before, ['stages', i, 'onto'], undefined) : before,
    quiet,
  );
}

/** The design with one stage more, where stages of its kind usually are, on what was cast. */
export function withStage(design: Value, kind: StageKind, titles: PieceTitles): Value {
  const unmade = listAt(design, ['parts']).find(
    (part) =>
      makingKinds[valueAt(part, ['kind']) as PartKind].includes(kind) &&
      !listAt(design, ['stages']).some((stage) => valueAt(stage, ['part']) === valueAt(part, ['key'])),
  );
  const part = unmade ?? castParts(design)[0];
  const made = withStageIn(design, kind, placeOf(design, kind), part, titles);
  const isOfPot = (stage: Value): boolean =>
    listAt(made, ['parts']).some(
      (each) => valueAt(each, ['key']) === valueAt(stage, ['part']) && batchOf(each) === batchOf(part),
    );
  const isTested = listAt(made, ['stages']).some(
    (stage) => valueAt(stage, ['kind']) === 'zap-test' && isOfPot(stage),
  );
  // What is cooked must be tested, each pot for itself.
  const asksTest = (kind === 'cook' || kind === 'rebatch') && !isTested;
  return asksTest ? withStageIn(made, 'zap-test', placeOf(made, 'zap-test'), part, titles) : made;
}

/**
 * A part of melted base that is cast in a mould, or in none any more: it is then poured and unmoulded instead of poured onto the
 * piece, or the other way round. What the maker has already said of that stays.
 */
export function withMeltMould(
  design: Value,
  index: number,
  mould: string | undefined,
  titles: PieceTitles,
): Value {
  const put = withValue(design, ['parts', index, 'mould'], mould);
  const part = valueAt(put, ['parts', index]);
  const isOwn = (kind: StageKind) => (stage: Value) =>
    valueAt(stage, ['part']) === valueAt(part, ['key']) && valueAt(stage, ['kind']) === kind;
  const stages = listAt(put, ['stages']);
  if (mould === undefined) {
    const out = stages.findIndex(isOwn('unmould'));
    const bare = out < 0 ? put : withoutStage(put, out);
    const isOfCavity = valueAt(part, ['amount', 'by']) === 'cavity';
    const open = isOfCavity ? withValue(bare, ['parts', index, 'amount'], undefined) : bare;
    const poured = listAt(open, ['stages']).findIndex(isOwn('pour'));
    return poured < 0 ? open : withStageKind(open, poured, 'glaze', titles);
  }
  const onto = stages.findIndex(isOwn('glaze'));
  if (onto < 0) return put;
  const cast = withStageKind(put, onto, 'pour', titles);
  return stages.some(isOwn('unmould')) ? cast : withStageIn(cast, 'unmould', onto + 1, part, titles);
}

/**
 * The design with the lye, the fats and the mixing of a part's batch as stages of their own, in front of the one that makes
 * the part. @returns the same design where it has them all, or nothing makes the part
 */
export function withPreparation(design: Value, index: number, titles: PieceTitles): Value {
  const part = valueAt(design, ['parts', index]);
  const batch = batchOf(part);
  const ofBatch = new Set(
    listAt(design, ['parts'])
      .filter((each) => batchOf(each) === batch)
      .map((each) => valueAt(each, ['key'])),
  );
  const isOfBatch = (stage: Value): boolean => ofBatch.has(valueAt(stage, ['part']));
  const makes = makingKinds.batch as readonly Value[];
  return (['make-lye', 'melt-fats', 'mix'] as const).reduce<Value>((before, kind) => {
    const stages = listAt(before, ['stages']);
    const place = stages.findIndex((each) => isOfBatch(each) && makes.includes(valueAt(each, ['kind'])));
    const isThere = stages.some((each) => isOfBatch(each) && valueAt(each, ['kind']) === kind);
    return isThere || place < 0 ? before : withStageIn(before, kind, place, part, titles);
  }, design);
}

/**
 * The design with a part mixed at once with another, from one lye: what prepared it alone goes, and the batch they share is
 * prepared once. @param other index of the other part; absent: it is mixed by itself
 */
export function mixedWith(
  design: Value,
  index: number,
  other: number | undefined,
  titles: PieceTitles,
): Value {
  if (other === undefined) return withValue(design, ['parts', index, 'batch'], undefined);
  const key = valueAt(design, ['parts', index, 'key']);
  const prepares: readonly Value[] = ['make-lye', 'melt-fats', 'mix'];
  const alone = listAt(design, ['stages']).flatMap((stage, i) =>
    valueAt(stage, ['part']) === key && prepares.includes(valueAt(stage, ['kind'])) ? [i] : [],
  );
  const bare = alone.reverse().reduce(withoutStage, design);
  const shared = withValue(bare, ['parts', index, 'batch'], batchOf(valueAt(bare, ['parts', other])));
  return withPreparation(shared, other, titles);
}

/** What a part is mixed with: by its name of a batch, or by itself. */
export function batchOf(part: Value): Value {
  return valueAt(part, ['batch']) ?? valueAt(part, ['key']);
}

/** A stage at which something else is done; called so, unless the maker gave it a title. */
export function withStageKind(design: Value, index: number, kind: StageKind, titles: PieceTitles): Value {
  return retitled(design, index, { kind }, titles);
}

/** A stage that makes or handles another part; called after it, unless the maker gave it a title. */
export function withStagePart(
  design: Value,
  index: number,
  part: string | undefined,
  titles: PieceTitles,
): Value {
  return retitled(design, index, { part }, titles);
}

function retitled(design: Value, index: number, change: object, titles: PieceTitles): Value {
  const before = valueAt(design, ['stages', index]);
  const usual = (stage: Value): string => {
    const part = listAt(design, ['parts']).find(
      (each) => valueAt(each, ['key']) === valueAt(stage, ['part']),
    );
    return titles.stage(valueAt(stage, ['kind']) as StageKind, textAt(part, ['title']));
  };
  const after = { ...(before as object), ...change } as Value;
  const title = textAt(before, ['title']);
  const isUsual = title === '' || title === usual(before);
  return withValue(design, ['stages', index], isUsual ? withValue(after, ['title'], usual(after)) : after);
}

/** The design without a stage, and without the links and waits that speak of it. */
export function withoutStage(design: Value, index: number): Value {
  const key = valueAt(design, ['stages', index, 'key']);
  const speaks = (each: Value): boolean =>
    ['from', 'to', 'stage'].some((field) => valueAt(each, [field]) === key);
  return ['links', 'waits', 'without'].reduce(
    (before, list) => keeping(before, list, speaks),
    withoutItem(design, ['stages'], index),
  );
}

/** A list of a design without some of its entries; one that is not there stays away. */
function keeping(design: Value, list: string, isGone: (each: Value) => boolean): Value {
  const all = listAt(design, [list]);
  const left = all.filter((each) => !isGone(each));
  return left.length === all.length ? design : withValue(design, [list], left);
}

/** The design going without a wait that a kind of stage brings; why is for the maker to say. */
export function withoutWait(design: Value, stage: string, part: string, state: string): Value {
  return withItem(design, ['without'], { stage, part, state });
}

/** What a stage has to wait for, and what it goes without: positions in the lists of the design. */
export interface Conditions {
  readonly links: readonly number[];
  readonly waits: readonly number[];
  readonly without: readonly number[];
}

export function conditionsOf(design: Value, stage: Value): Conditions {
  const positions = (list: string, field: string): number[] =>
    listAt(design, [list]).flatMap((each, i) => (valueAt(each, [field]) === stage ? [i] : []));
  return {
    links: positions('links', 'to'),
    waits: positions('waits', 'stage'),
    without: positions('without', 'stage'),
  };
}
