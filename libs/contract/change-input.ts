import { z } from 'zod';
import { key, localDate, localDateTime, percent } from './common.js';
import { mould } from './mould.js';
import { recipe } from './recipe.js';
import { logEntry, runOrder } from './run.js';
import { span } from './workshop.js';

const { count } = runOrder.shape;

/**
 * A change as it may be asked for: what a remedy proposes (`remedyChange`), within the bounds that the order, the recipe,
 * the mould or the hours it changes have themselves. Whether it fits those is checked once it is carried out on them.
 */
export const changeInput = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('recipe').meta({ description: 'These shares in the recipe; its water told as a lye' }),
      recipe: key,
      lyeConcentrationPercent: recipe.shape.lyeConcentrationPercent,
      sodiumLactatePercent: percent(0, 5).optional(),
    }),
    z.strictObject({ kind: z.literal('start'), run: key, startAfter: localDateTime }),
    z.strictObject({
      kind: z.literal('hours').meta({ description: 'An exception to the weekly hours' }),
      added: span,
      date: localDate,
      spans: z.array(span).max(12).meta({ description: 'All spans of that day, the added one included' }),
    }),
    z.strictObject({ kind: z.literal('count'), run: key, count }),
    z.strictObject({
      kind: z
        .literal('split')
        .meta({ description: 'The run is made for `count`, the rest as a run of its own' }),
      run: key,
      count,
      rest: runOrder,
    }),
    z.strictObject({
      kind: z.literal('cavities').meta({ description: 'More of a mould is owned' }),
      mould: key,
      cavities: mould.shape.cavities,
    }),
    z.strictObject({
      kind: z
        .literal('drop-parts')
        .meta({ description: 'Entries for the log of the run that leave parts out' }),
      run: key,
      entries: z.array(logEntry).min(1).max(20),
    }),
    z.strictObject({ kind: z.literal('ready-by'), run: key, readyBy: localDate }),
    z.strictObject({
      kind: z
        .literal('plan-anew')
        .meta({ description: 'Nothing but a plan that is not held to the one before' }),
    }),
  ])
  .meta({ id: 'ChangeInput' });
