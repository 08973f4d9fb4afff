import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { planChange, planDocument } from './plan-document.js';
import { planRequest } from './api.js';
import { changeInput } from './change-input.js';
import { logEntry } from './run.js';

/** Something that has not happened: a remedy's change, entries that the log might get, or stages put elsewhere. */
export const whatIf = z
  .strictObject({
    change: changeInput.optional(),
    entries: z.array(logEntry).max(20).default([]),
    pins: planRequest.shape.pins,
  })
  .refine(
    ({ change, entries, pins = [] }) =>
      [change !== undefined, entries.length > 0, pins.length > 0].filter(Boolean).length === 1,
    { ...ruleError('one-wish'), path: ['change'] },
  )
  .meta({ id: 'WhatIf' });

/** The plan that there would be, and how it differs from the one there is. */
export const whatIfAnswer = z
  .strictObject({ plan: planDocument, changes: z.array(planChange) })
  .meta({ id: 'WhatIfAnswer' });

/** A change to carry out. */
export const changeRequest = z.strictObject({ change: changeInput }).meta({ id: 'ChangeRequest' });

export type WhatIf = z.infer<typeof whatIf>;
export type WhatIfAnswer = z.infer<typeof whatIfAnswer>;
export type ChangeRequest = z.infer<typeof changeRequest>;
