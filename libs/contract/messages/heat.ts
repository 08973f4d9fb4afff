import { z } from 'zod';
import { band } from '../common.js';
import { gels, keptWays } from '../names/index.js';
import { message } from './message.js';

const chance = z.number().min(0).max(1);
const min = z.number().meta({ description: 'minutes from the pour' });
const kept = z.enum(keptWays);

/** What a poured part does by its own heat, and what would change it. */
export const heatNote = z
  .discriminatedUnion('code', [
    message('heat.gel', { whole: chance, part: chance, none: chance }),
    message('heat.gel-asked', {
      asked: z.enum(gels).exclude(['auto']),
      ...{ whole: chance, part: chance, none: chance },
    }),
    message('heat.hottest', { hottestC: band.meta({ description: 'Of its middle, °C' }), min }),
    message('heat.only-cools', { fromC: z.number() }),
    message('heat.cooled', { min, belowC: z.number() }),
    message('heat.overheats', { chance }),
    message('heat.kept', {
      kept,
      isTold: z.boolean().meta({ description: 'false: nobody said, and it is what is usual for the mould' }),
    }),
    message('heat.kept-else', {
      kept,
      towards: z.enum(['gel', 'no-gel', 'no-overheating']),
      chance: chance.meta({ description: 'That it comes to that, kept so' }),
    }),
    message('heat.pour', { warmer: z.boolean().meta({ description: 'false: cooler' }) }),
  ])
  .meta({ id: 'HeatNote' });

export type HeatNote = z.infer<typeof heatNote>;
