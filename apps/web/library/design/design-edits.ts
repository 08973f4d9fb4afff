import type { PartKind, StageKind } from '#contract/names';
import { listAt, valueAt, withItem, withoutItem, withValue, type Value, textAt } from '../../form/values.js';
import { newKey } from '../new-key.js';

/** What makes a part of each kind, unless the maker chooses otherwise. */
const makingKinds: Readonly<Record<PartKind, StageKind>> = {
  batch: 'pour',
  'melt-and-pour': 'glaze',
  decor: 'press-decor',
};

const freshParts: Readonly<Record<PartKind, object>> = {
  batch: { amount: { by: 'cavity', fillPercent: 100 } },
  'melt-and-pour': {},
  decor: { perPiece: 1 },
};

/** The design with one part more, and the stage that makes it. @param stageTitle of that stage */
export function withPart(design: Value, kind: PartKind, title: string, stageTitle: string): Value {
  const key = newKey(kind === 'batch' ? 'part' : kind, keysOf(design, 'parts'));
  const made = withItem(design, ['parts'], { key, title, kind, ...freshParts[kind] });
  return withStage(made, makingKinds[kind], stageTitle, key);
}

/** A part of another kind: its name stays, the rest is the new kind's. */
export function withPartKind(design: Value, index: number, kind: PartKind): Value {
  const { key, title } = (valueAt(design, ['parts', index]) ?? {}) as { readonly [name: string]: Value };
  return withValue(design, ['parts', index], { key, title, kind, ...freshParts[kind] });
}

/** The design without a part, the stages that make or handle it, and all that waits for it. */
export function withoutPart(design: Value, index: number): Value {
  const key = valueAt(design, ['parts', index, 'key']);
  const bare = withoutItem(design, ['parts'], index);
  const positions = listAt(bare, ['stages']).flatMap((stage, i) =>
    valueAt(stage, ['part']) === key ? [i] : [],
  );
  const left = positions.reverse().reduce(withoutStage, bare);
  return withValue(
    left,
    ['waits'],
    listAt(left, ['waits']).filter((wait) => valueAt(wait, ['part']) !== key),
  );
}

/** The design with one stage more at its end. */
export function withStage(design: Value, kind: StageKind, title: string, part?: Value): Value {
  const key = newKey(kind, keysOf(design, 'stages'));
  return withItem(design, ['stages'], {
    key,
    title,
    kind,
    part: part ?? valueAt(design, ['parts', 0, 'key']),
  });
}

/** The design without a stage, and without the links and waits that speak of it. */
export function withoutStage(design: Value, index: number): Value {
  const key = valueAt(design, ['stages', index, 'key']);
  const speaks = (each: Value): boolean =>
    ['from', 'to', 'stage'].some((field) => valueAt(each, [field]) === key);
  return ['links', 'waits'].reduce(
    (before, list) =>
      withValue(
        before,
        [list],
        listAt(before, [list]).filter((each) => !speaks(each)),
      ),
    withoutItem(design, ['stages'], index),
  );
}

/** What a stage has to wait for: positions in the lists of links and waits. */
export interface Conditions {
  readonly links: readonly number[];
  readonly waits: readonly number[];
}

export function conditionsOf(design: Value, stage: Value): Conditions {
  const positions = (list: string, field: string): number[] =>
    listAt(design, [list]).flatMap((each, i) => (valueAt(each, [field]) === stage ? [i] : []));
  return { links: positions('links', 'to'), waits: positions('waits', 'stage') };
}

function keysOf(design: Value, list: string): string[] {
  return listAt(design, [list]).map((each) => textAt(each, ['key']));
}
