import type { Words } from '../words/words.js';
import type { SheetWeigh } from './sheet-sittings.js';
import type { BatchToMix } from './use-sheet.js';
import { weighGroups, type WeighGroup, type WeighLine } from './weigh-lines.js';

/** Things that are weighed one after the other into one vessel, with what may harm while that is done. */
export interface WeighSection {
  readonly kind: WeighGroup['kind'] | 'portion' | 'base' | 'decor';
  /** The same in every language, and of this section alone among those of its batch or part. */
  readonly key: string;
  /** Of a portion; the others are told by their kind. */
  readonly title?: string;
  readonly lines: readonly WeighLine[];
  readonly totalG?: number | undefined;
  readonly cautions: BatchToMix['cautions'];
}

/**
 * What is weighed for a stage of one batch or part: the lines of the bench sheet, in its order, as data.
 * @param titled what a material is called, by its key and title
 */
export function weighSections(
  { card, kinds }: SheetWeigh,
  words: Words['run']['sheet'],
  titled: (key: string, title: string) => string,
): WeighSection[] {
  const batch = 'shared' in card ? card.shared : card.own;
  const sections = batch === undefined ? [] : ofBatch(batch, coloured(card, batch), { kinds, words, titled });
  if ('shared' in card || !kinds.has('batter')) return sections;
  const { part } = card;
  const { kind, massG, material = '', cautions } = part;
  if (massG === undefined || (kind !== 'melt-and-pour' && kind !== 'decor')) return sections;
  const title = kind === 'decor' ? titled(material, part.title) : words.base;
  const line = { key: material || part.part, title, massG };
  return [...sections, { kind: kind === 'decor' ? 'decor' : 'base', key: kind, lines: [line], cautions }];
}

/** What one part takes of a batch, where that is all for it and has one colour; else what all of the batch takes. */
function coloured(card: SheetWeigh['card'], batch: BatchToMix): BatchToMix['amounts'] {
  const own = 'shared' in card ? undefined : card.part.batch;
  return batch.portions.length > 1 ? batch.amounts : (own ?? batch.amounts);
}

function ofBatch(
  batch: BatchToMix,
  amounts: BatchToMix['amounts'],
  { kinds, words, titled }: Pick<SheetWeigh, 'kinds'> & Asked,
): WeighSection[] {
  const groups = weighGroups({ batch: amounts }, words, titled)
    .filter(({ kind }) => kinds.has(kind))
    .map((group): WeighSection => ({
      ...group,
      key: group.kind,
      cautions: group.kind === 'lye' ? batch.cautions.filter(isOfLye) : [],
    }));
  if (!kinds.has('batter') || batch.portions.length < 2) return groups;
  const portions = batch.portions.map(({ part, portion, title, massG, ...added }): WeighSection => {
    const lines = [...added.colourants, ...added.additions, ...added.fragrances];
    return {
      kind: 'portion',
      key: `portion ${part} ${portion ?? ''}`,
      title,
      lines: [{ key: 'batter', title: words.ofBatter, massG }, ...lines],
      cautions: [],
    };
  });
  return [...groups, ...portions];
}

/**
 * Cautions that stand where the batch comes together: all but those of lye, which stand with the lye, and of soap, which there
 * is none of yet.
 */
export function otherCautions({ card, kinds }: SheetWeigh): BatchToMix['cautions'] {
  if (!kinds.has('batter')) return [];
  const batch = 'shared' in card ? card.shared : card.own;
  const own = 'shared' in card || batch === undefined ? [] : card.part.cautions;
  const all = [...(batch?.cautions ?? []), ...own].filter(
    (each) => !isOfLye(each) && each.code !== 'caution.fresh-soap',
  );
  return all.filter(({ code }, i) => all.findIndex((each) => each.code === code) === i);
}

function isOfLye({ code }: { readonly code: string }): boolean {
  return code.startsWith('caution.lye');
}

interface Asked {
  readonly words: Words['run']['sheet'];
  readonly titled: (key: string, title: string) => string;
}
