import { z } from 'zod';
import { localDate } from '../common.js';
import { liquidAllergens } from '../names/index.js';
import { message } from './message.js';

/** A caution that stands where the act is. */
export const caution = z
  .discriminatedUnion('code', [
    message('caution.lye', {}),
    message('caution.lye-making', {}),
    message('caution.lye-keeping', {}),
    message('caution.fresh-soap', {}),
    message('caution.dust', {}),
    message('caution.hot-base', {}),
    message('caution.hot-fats', {}),
    message('caution.cooking', {}),
    message('caution.alcohol', {}),
    message('caution.zap-test', {}),
    message('caution.looks-edible', {}),
    message('caution.allergens', { allergens: z.array(z.enum(liquidAllergens)).min(1) }),
    message('caution.missed-day', { readyBy: localDate }),
  ])
  .meta({ id: 'Caution' });

export type Caution = z.infer<typeof caution>;
/** Cautions that say the same wherever they stand. */
export type CautionCode = Exclude<Caution['code'], 'caution.missed-day' | 'caution.allergens'>;
