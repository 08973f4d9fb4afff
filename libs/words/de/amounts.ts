import type { AmountsMessage } from '#contract';
import type { MessageWords } from '../words.js';

/** Worauf Mengen beruhen, wohin Reste können und wofür Kosten sind; Satzteile. */
export const amounts: MessageWords<AmountsMessage> = {
  'use.written': ({ ml }, texts) => `${texts.volume(ml)}, wie eingegeben`,
  'use.cavity': ({ fillPercent, cavityMl, cavities = 1 }, texts) =>
    cavities === 1
      ? `${texts.percent(fillPercent)} einer Mulde von ${texts.volume(cavityMl)}`
      : `${texts.percent(fillPercent)} von ${texts.number(cavities)} Mulden zu je ${texts.volume(cavityMl)}`,
  'use.finished': ({ ml, shrinkagePercent }, texts) =>
    `${texts.volume(ml)}, nachdem es um ${texts.percent(shrinkagePercent)} geschrumpft ist`,
  'use.coat': ({ areaCm2, thicknessMm }, texts) =>
    `ein Überzug von ${texts.area(areaCm2 * 100)}, ${texts.length(thicknessMm)} dick`,
  'use.bead': ({ lengthMm, widthMm }, texts) =>
    `eine Linie, ${texts.length(lengthMm)} lang und ${texts.length(widthMm)} breit`,
  'use.bead-section': ({ lengthMm, sectionMm2 }, texts) =>
    `eine Linie, ${texts.length(lengthMm)} lang, mit einem Querschnitt von ${texts.area(sectionMm2)}`,
  'use.weighed': ({ pieces, massG }, texts) =>
    pieces === 1
      ? `ein Stück von ${texts.mass(massG)}`
      : `${String(pieces)} Stück von zusammen ${texts.mass(massG)}`,
  'use.learned': ({ weighings, pieces }) =>
    `${weighings === 1 ? 'eine Wägung' : `${String(weighings)} Wägungen`} von ${pieces === 1 ? 'einem Stück' : `${String(pieces)} Stück`}`,
  'leftover.melt-again': () => 'fest werden lassen und das nächste Mal wieder schmelzen',
  'leftover.fill': ({ mould, cavities }, texts) =>
    `${cavities === 1 ? 'eine Mulde' : `${String(cavities)} Mulden`} von ${texts.quoted(mould)} füllen`,
  'leftover.dough': () => 'luftdicht als Seifenteig aufheben (Handschuhe: Es ist frische Seife)',
  'leftover.decor': ({ decor, pieces }, texts) =>
    `luftdicht als Seifenteig für etwa ${String(pieces)} Stück ${texts.quoted(decor)} aufheben (Handschuhe: Es ist frische Seife)`,
  'cost.work': () => 'Arbeit',
  'cost.material': ({ key, title }, texts) => texts.titled(key, title),
};
