import type { AmountsMessage } from '#contract';
import type { MessageWords } from '../words.js';

/** What amounts rest on, where leftovers can go and what a cost is for; parts of sentences. */
export const amounts: MessageWords<AmountsMessage> = {
  'use.written': ({ ml }, texts) => `${texts.volume(ml)} as you entered it`,
  'use.cavity': ({ fillPercent, cavityMl, cavities = 1 }, texts) =>
    cavities === 1
      ? `${texts.percent(fillPercent)} of a cavity of ${texts.volume(cavityMl)}`
      : `${texts.percent(fillPercent)} of ${texts.number(cavities)} cavities of ${texts.volume(cavityMl)} each`,
  'use.finished': ({ ml, shrinkagePercent }, texts) =>
    `${texts.volume(ml)} once it has shrunk by ${texts.percent(shrinkagePercent)}`,
  'use.coat': ({ areaCm2, thicknessMm }, texts) =>
    `a coat of ${texts.area(areaCm2 * 100)}, ${texts.length(thicknessMm)} thick`,
  'use.bead': ({ lengthMm, widthMm }, texts) =>
    `a line ${texts.length(lengthMm)} long and ${texts.length(widthMm)} wide`,
  'use.bead-section': ({ lengthMm, sectionMm2 }, texts) =>
    `a line ${texts.length(lengthMm)} long with a section of ${texts.area(sectionMm2)}`,
  'use.weighed': ({ pieces, massG }, texts) =>
    pieces === 1
      ? `a piece of ${texts.mass(massG)}`
      : `${String(pieces)} pieces of ${texts.mass(massG)} together`,
  'use.learned': ({ weighings, pieces }) =>
    `${weighings === 1 ? 'one weighing' : `${String(weighings)} weighings`} of ${pieces === 1 ? 'a piece' : `${String(pieces)} pieces`}`,
  'leftover.melt-again': () => 'let it set and melt it again next time',
  'leftover.fill': ({ mould, cavities }, texts) =>
    `fill ${cavities === 1 ? 'a cavity' : `${String(cavities)} cavities`} of ${texts.quoted(mould)}`,
  'leftover.dough': () => 'keep it airtight as soap dough (wear gloves: it is fresh soap)',
  'leftover.decor': ({ decor, pieces }, texts) =>
    `keep it airtight as soap dough for about ${String(pieces)} of ${texts.quoted(decor)} (wear gloves: it is fresh soap)`,
  'cost.work': () => 'Work',
  'cost.material': ({ key, title }, texts) => texts.titled(key, title),
};
