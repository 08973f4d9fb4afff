import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { key, line, title } from './common.js';
import { closingStates, lateLosses, openingStates, stageKinds } from './names/index.js';
import { part } from './part.js';

export const stage = z
  .strictObject({
    key,
    title,
    kind: z.enum(stageKinds),
    part: key.meta({ description: 'The part this stage makes or handles' }),
    onto: key.optional().meta({
      description:
        'The part that it is put onto or into; absent: for a layer the one made last before in the same cavity, ' +
        'for what is dipped, piped, glazed or set in the one made last before',
    }),
    setupMin: z.int().min(0).max(600).optional().meta({
      description:
        'Hands-on minutes whatever the count; without either of the two, what the kind usually takes',
    }),
    perPieceS: z
      .number()
      .min(0)
      .max(3600)
      .optional()
      .meta({ description: 'Hands-on seconds for each piece' }),
    restMin: z
      .int()
      .min(1)
      .max(43_200)
      .optional()
      .meta({ description: 'For a rest: how many minutes it lasts, in which nobody is needed' }),
    needs: z
      .array(z.strictObject({ equipment: key, count: z.int().min(1).max(1000).default(1) }))
      .max(10)
      .default([]),
  })
  .meta({ id: 'Stage' });

/** What coming too late loses on this piece, where it is not what the kind of the stage would. */
const late = z
  .strictObject({
    loses: z.enum(lateLosses).meta({
      description: 'pieces: they are lost, unsafe or do not bond; looks: no more than looks and easy work',
    }),
    reason: line(200).min(1).meta({ description: 'Why it is so on this piece; shown with the plan' }),
  })
  .optional()
  .meta({ id: 'Late' });

/** One stage after another, by the clock on the wall: `to` starts this long after `from` has ended. */
export const link = z
  .strictObject({
    from: key,
    to: key,
    atLeastMin: z.int().min(0).max(525_600).default(0),
    atMostMin: z.int().min(0).max(525_600).optional(),
    late,
  })
  .refine((l) => l.late === undefined || l.atMostMin !== undefined, {
    ...ruleError('late-without-closing'),
    path: ['late'],
  })
  .refine((l) => l.atMostMin === undefined || l.atLeastMin <= l.atMostMin, {
    ...ruleError('longest-under-shortest'),
    path: ['atMostMin'],
  })
  .meta({ id: 'Link' });

/** A stage that waits for the soap: it starts once `part` has one state and before it has another. */
export const wait = z
  .strictObject({
    stage: key,
    part: key.meta({ description: 'The part whose clock counts' }),
    opens: z
      .enum(openingStates)
      .optional()
      .meta({ description: 'The stage may start once the part has this state' }),
    closes: z
      .enum(closingStates)
      .optional()
      .meta({ description: 'The stage must start before the part has this state' }),
    late,
  })
  .refine((w) => w.late === undefined || w.closes !== undefined, {
    ...ruleError('late-without-closing'),
    path: ['late'],
  })
  .refine((w) => w.opens !== undefined || w.closes !== undefined, {
    ...ruleError('wait-without-state'),
    path: ['opens'],
  })
  .meta({ id: 'Wait' });

/** A wait that the kind of a stage would bring and this piece goes without. */
export const refusedWait = z
  .strictObject({
    stage: key,
    part: key,
    state: z.enum([...openingStates, ...closingStates]),
    reason: line(200).min(1).meta({ description: 'Why this piece does not need it; shown with the plan' }),
  })
  .meta({ id: 'RefusedWait' });

/** A reusable description of a piece: its parts, and the stages that build it. */
export const pieceDesign = z
  .strictObject({
    key,
    title,
    looksEdible: z
      .boolean()
      .default(false)
      .meta({ description: 'It could be taken for food: shows the caution and where it may not be sold' }),
    parts: z.array(part).min(1).max(20),
    stages: z.array(stage).min(1).max(60),
    links: z.array(link).max(200).default([]),
    waits: z.array(wait).max(200).default([]),
    without: z
      .array(refusedWait)
      .max(200)
      .default([])
      .meta({ description: 'Waits that the kinds of its stages would bring and that it goes without' }),
    adds: z
      .enum(['all', 'firmness'])
      .default('all')
      .meta({
        description:
          'Which waits the kinds of its stages bring: all, or only that nothing is unmoulded or cut before it is firm, ' +
          'as in runs that were planned before the others came',
      }),
  })
  .meta({ id: 'PieceDesign' });

export type Stage = z.infer<typeof stage>;
export type Link = z.infer<typeof link>;
export type Wait = z.infer<typeof wait>;
export type RefusedWait = z.infer<typeof refusedWait>;
export type PieceDesign = z.infer<typeof pieceDesign>;
