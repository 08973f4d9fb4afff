import { z } from 'zod';
import { key, title } from '../common.js';
import { message } from './message.js';

const figure = z.number();

/** From what it is known how much one piece takes. */
export const useBasis = z
  .discriminatedUnion('code', [
    message('use.written', { ml: figure }),
    message('use.cavity', {
      fillPercent: figure,
      cavityMl: figure,
      cavities: z.int().optional().meta({ description: 'That make one piece; absent: one' }),
    }),
    message('use.finished', { ml: figure, shrinkagePercent: figure }),
    message('use.coat', { areaCm2: figure, thicknessMm: figure }),
    message('use.bead', { lengthMm: figure, widthMm: figure }),
    message('use.bead-section', { lengthMm: figure, sectionMm2: figure }),
    message('use.weighed', { pieces: z.int(), massG: figure }),
  ])
  .meta({ id: 'UseBasis' });

/** What was weighed at the bench since. */
export const useLearned = message('use.learned', { weighings: z.int(), pieces: z.int() }).meta({
  id: 'UseLearned',
});

/** Where a leftover can go. */
export const leftoverUse = z
  .discriminatedUnion('code', [
    message('leftover.melt-again', {}),
    message('leftover.fill', { mould: title, cavities: z.int() }),
    message('leftover.dough', {}),
    message('leftover.decor', { decor: title, pieces: z.int() }),
  ])
  .meta({ id: 'LeftoverUse' });

/** What a cost is for; a name, not a sentence. */
export const costItem = z
  .discriminatedUnion('code', [message('cost.work', {}), message('cost.material', { key, title })])
  .meta({ id: 'CostItem' });

export type CostItem = z.infer<typeof costItem>;
export type UseBasis = z.infer<typeof useBasis>;
export type LeftoverUse = z.infer<typeof leftoverUse>;
export type AmountsMessage = UseBasis | z.infer<typeof useLearned> | LeftoverUse | CostItem;
