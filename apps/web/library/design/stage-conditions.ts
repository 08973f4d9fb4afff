import type { PieceDesign, Wait } from '#contract';
import type { ClosingState, OpeningState, StageKind } from '#contract/names';
import { impliedOrder } from '#runs';
import { listAt, textAt, valueAt, type Value } from '../../form/values.js';
import type { Words } from '../../words/words.js';
import { conditionsOf } from './design-edits.js';

/** How long something takes, as the reader writes it. */
interface Lengths {
  readonly length: (minutes: number) => string;
}

/** A condition that the kind of a stage brings. */
export interface ImpliedCondition {
  readonly text: string;
  /** What a design may go without; absent for order, and for firmness, which nothing may go without. */
  readonly refusable?: { readonly part: string; readonly state: string };
}

/** When a stage may be done, each condition in plain words: “once “Base” is firm enough to unmould”. */
export interface StageConditions {
  /** As the design says itself. */
  readonly own: readonly string[];
  readonly implied: readonly ImpliedCondition[];
  /** What it goes without, in the order of the design. */
  readonly without: readonly string[];
}

/** Conditions of each stage of a design, by its key. @param content half written as it may be */
export function stageConditions(
  content: Value,
  library: Words['library'],
  { length }: Lengths,
): ReadonlyMap<string, StageConditions> {
  const lists = ['parts', 'stages', 'links', 'waits', 'without'] as const;
  const design = Object.fromEntries(lists.map((list) => [list, listAt(content, [list])]));
  // Only keys, kinds and moulds are compared.
  const implied = impliedOrder(design as unknown as PieceDesign);
  const titleOf = (list: 'parts' | 'stages', key: Value): string =>
    textAt(
      listAt(content, [list]).find((each) => valueAt(each, ['key']) === key),
      ['title'],
    ) || '…';
  const told = (value: Value): string | undefined =>
    typeof value === 'number' && value > 0 ? length(value) : undefined;
  const stateText = (state: string, part: string): string =>
    state in library.opens
      ? library.opens[state as OpeningState](part)
      : library.closes[state as ClosingState](part);
  const impliedWait = (kind: StageKind, { part, opens, closes }: Wait): ImpliedCondition[] =>
    [opens, closes].flatMap((state) => {
      if (state === undefined) return [];
      const isFirmness = state === opens && (kind === 'unmould' || kind === 'cut');
      const text = stateText(state, titleOf('parts', part));
      return [isFirmness ? { text } : { text, refusable: { part, state } }];
    });
  const of = (stage: Value): StageConditions => {
    const key = valueAt(stage, ['key']);
    const { links, waits, without } = conditionsOf(content, key);
    return {
      own: [
        ...links.map((i) => {
          const link = valueAt(content, ['links', i]);
          const from = titleOf('stages', valueAt(link, ['from']));
          const [least, most] = [told(valueAt(link, ['atLeastMin'])), told(valueAt(link, ['atMostMin']))];
          return library.linkText(from, least, most);
        }),
        ...waits.flatMap((i) => {
          const wait = valueAt(content, ['waits', i]);
          const states = [textAt(wait, ['opens']), textAt(wait, ['closes'])].filter((each) => each !== '');
          return states.map((state) => stateText(state, titleOf('parts', valueAt(wait, ['part']))));
        }),
      ],
      implied: [
        ...implied.links
          .filter(({ to }) => to === key)
          .map(({ from }) => ({ text: library.linkText(titleOf('stages', from), undefined, undefined) })),
        ...implied.waits
          .filter((wait) => wait.stage === key)
          .flatMap((wait) => impliedWait(valueAt(stage, ['kind']) as StageKind, wait)),
      ],
      without: without.map((i) => {
        const each = valueAt(content, ['without', i]);
        return stateText(textAt(each, ['state']), titleOf('parts', valueAt(each, ['part'])));
      }),
    };
  };
  return new Map(listAt(content, ['stages']).map((stage) => [textAt(stage, ['key']), of(stage)]));
}
