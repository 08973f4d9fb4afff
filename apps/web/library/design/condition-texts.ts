import type { PieceDesign } from '#contract';
import { impliedOrder } from '#runs';
import type { ClosingState, OpeningState } from '#contract/names';
import { useForm } from '../../form/form-context.js';
import { listAt, valueAt, type Value, textAt } from '../../form/values.js';
import { useTimes } from '../../look/times.js';
import { useWords } from '../../words/words.js';
import { conditionsOf } from './design-edits.js';

/** What a stage waits for though the design does not say so, in plain words. */
export function useUnsaidTexts(stage: Value): string[] {
  const { library } = useWords();
  const { content } = useForm();
  const [parts, stages, links, waits, without] = ['parts', 'stages', 'links', 'waits', 'without'].map(
    (list) => listAt(content, [list]),
  );
  // Half written as it may be: only keys, kinds and moulds are compared.
  const implied = impliedOrder({ parts, stages, links, waits, without } as unknown as PieceDesign);
  const titleOf = (list: readonly Value[] | undefined, key: string): string =>
    textAt(
      list?.find((each) => valueAt(each, ['key']) === key),
      ['title'],
    ) || '…';
  return [
    ...implied.links
      .filter(({ to }) => to === stage)
      .map(({ from }) => library.linkText(titleOf(stages, from), undefined, undefined)),
    ...implied.waits.flatMap(({ stage: waiting, part, opens, closes }) =>
      waiting !== stage
        ? []
        : [
            ...(opens === undefined ? [] : [library.opens[opens](titleOf(parts, part))]),
            ...(closes === undefined ? [] : [library.closes[closes](titleOf(parts, part))]),
          ],
    ),
  ].map((condition) => library.unsaid(condition));
}

/** What a stage waits for, each condition in plain words: “once the base is firm enough to unmould”. */
export function useConditionTexts(stage: Value): string[] {
  const { library } = useWords();
  const { length } = useTimes();
  const { content } = useForm();
  const { links, waits } = conditionsOf(content, stage);
  const unsaid = useUnsaidTexts(stage);
  const titleOf = (list: string, key: Value): string => {
    const found = listAt(content, [list]).find((each) => valueAt(each, ['key']) === key);
    return textAt(found, ['title']) || '…';
  };
  const told = (value: Value): string | undefined =>
    typeof value === 'number' && value > 0 ? length(value) : undefined;
  return [
    ...links.map((i) => {
      const link = valueAt(content, ['links', i]);
      return library.linkText(
        titleOf('stages', valueAt(link, ['from'])),
        told(valueAt(link, ['atLeastMin'])),
        told(valueAt(link, ['atMostMin'])),
      );
    }),
    ...waits.flatMap((i) => {
      const wait = valueAt(content, ['waits', i]);
      const part = titleOf('parts', valueAt(wait, ['part']));
      const opens = valueAt(wait, ['opens']) as OpeningState | undefined;
      const closes = valueAt(wait, ['closes']) as ClosingState | undefined;
      return [
        ...(opens === undefined ? [] : [library.opens[opens](part)]),
        ...(closes === undefined ? [] : [library.closes[closes](part)]),
      ];
    }),
    ...unsaid,
  ];
}
