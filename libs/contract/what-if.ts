import { z } from 'zod';
import { planChange, planDocument } from './plan-document.js';
import { remedyChange } from './remedy.js';
import { logEntry } from './run.js';

/** Something that has not happened: a change such as a remedy's, or entries that the log might get. */
export const whatIf = z
  .strictObject({
    change: remedyChange.optional(),
    entries: z.array(logEntry).max(20).default([]),
  })
  .refine(({ change, entries }) => (change === undefined) !== (entries.length === 0), {
    message: 'one change, or entries for the log, and not both',
    path: ['change'],
  })
  .meta({ id: 'WhatIf' });

/** The plan that there would be, and how it differs from the one there is. */
export const whatIfAnswer = z
  .strictObject({ plan: planDocument, changes: z.array(planChange) })
  .meta({ id: 'WhatIfAnswer' });

/** A change to carry out. */
export const changeRequest = z.strictObject({ change: remedyChange }).meta({ id: 'ChangeRequest' });

export type WhatIf = z.infer<typeof whatIf>;
export type WhatIfAnswer = z.infer<typeof whatIfAnswer>;
export type ChangeRequest = z.infer<typeof changeRequest>;
