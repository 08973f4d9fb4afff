import { z } from 'zod';
import { evidence } from './evidence.js';
import { beyond, clockFloor, clockMove, clockRule, cureNote, reason } from './messages/clock.js';
import { heatNote } from './messages/heat.js';
import { risk } from './messages/risk.js';
import { band, instant, key } from './common.js';
import { gels, keptWays } from './names/index.js';
import { partReference } from './references.js';
import { soapStates } from './names/soap-states.js';

const text = z.string();

export const clockForecast = z
  .strictObject({
    part: key,
    state: z.enum(soapStates),
    closes: z.boolean().meta({ description: 'true: the soap is so until then; the state closes a window' }),
    band: band.meta({ description: 'minutes from the moment the clock starts, as forecast' }),
    now: band.meta({ description: 'The same, given what the log has seen of this batch' }),
    baseMin: z.number(),
    sigma: z.number().meta({ description: 'Of the logarithm; batch and workshop together' }),
    reasons: z.array(reason),
    beyond: z.array(beyond),
  })
  .meta({ id: 'ClockForecast' });

/** How many equally likely times a forecast is told by. */
export const FORECAST_TIMES = 20;

export const likelyTimes = z.array(z.number()).length(FORECAST_TIMES).meta({
  description:
    'Whole minutes from `fromAt`, ascending, each as likely as the next: the quantiles at (k − ½) / 20, given what the log has seen',
});

/** When a state of a part comes that a stage waits for, as equally likely times. */
export const stageForecast = z
  .strictObject({
    part: partReference,
    state: z.enum(soapStates),
    closes: z.boolean().meta({ description: 'true: the stage must be over by then' }),
    fromAt: instant.meta({ description: 'When its clock starts: as it was logged, or else as planned' }),
    minutes: likelyTimes,
  })
  .meta({ id: 'StageForecast' });

/** Whether all pieces can be filled, dipped or piped before the batter is too stiff for it. */
export const fillingTime = z
  .strictObject({
    part: key,
    stage: key,
    start: z.enum(soapStates),
    end: z.enum(soapStates),
    stretchMin: band.meta({ description: 'minutes between the two states' }),
    neededMin: z.number().meta({ description: 'minutes that all pieces take' }),
    chance: z.number().min(0).max(1),
    piecesSurely: z.int().meta({ description: 'Pieces done in time with 90 % certainty' }),
    batches: z.int().meta({ description: 'Equal batches that make every one of them 90 % sure' }),
  })
  .meta({ id: 'FillingTime' });

export const paces = ['cooling', 'keeping', 'batter', 'early', 'set', 'glaze', 'cure'] as const;

/** What the bench log has taught of one pace, for the workshop or for one recipe. */
export const lesson = z
  .strictObject({
    pace: z.enum(paces),
    recipe: key.nullable().meta({ description: 'null: for recipes that were never logged' }),
    recipeTitle: text.nullable().meta({ description: 'null where none is known' }),
    factor: band.meta({ description: 'What forecasts are multiplied by' }),
    before: band.meta({ description: 'The same for a workshop that has logged nothing' }),
    widthShare: z.number().meta({
      description: 'Width of the band of a usual batch, in logarithms, as a share of that without lessons',
    }),
    observations: z.array(
      z.strictObject({
        recipe: key,
        entries: z
          .array(text)
          .meta({ description: 'RUN/ENTRY of the log; “forget” makes one teach nothing' }),
        exact: z.number().optional().meta({ description: 'Came at this multiple of the forecast' }),
        above: z.number().optional().meta({ description: 'Not yet at this multiple' }),
        below: z.number().optional().meta({ description: 'Already at this multiple' }),
      }),
    ),
  })
  .meta({ id: 'Lesson' });

/** A pace of which the log tells only when stages were done: that tells nothing of the soap. */
export const onlyDone = z
  .strictObject({ pace: z.enum(paces), batches: z.int().min(1) })
  .meta({ id: 'OnlyDone' });

const onlyDoneOnes = z.array(onlyDone).min(1).optional().meta({
  description: 'Of what only done stages were logged, never a look that was too early; absent: of nothing',
});

/** How the latest forecasts came true, each as it stood before its batch began. */
export const forecastRecord = z
  .strictObject({
    bandPercent: z
      .int()
      .min(1)
      .max(99)
      .meta({ description: 'How surely a time was to come inside its band' }),
    expectedInside: z.number().meta({ description: 'So many of them were to come inside' }),
    forecasts: z
      .array(
        z.strictObject({
          pace: z.enum(paces),
          recipe: key,
          day: z.int().meta({ description: 'When it was last seen, days since 1970' }),
          verdict: z.enum(['inside', 'earlier', 'later', 'unknown']).meta({
            description:
              'unknown: the looks were too far apart to tell, or nobody looked before it was ready',
          }),
        }),
      )
      .min(1)
      .meta({ description: 'The latest at most 30 batches that were found ready, oldest first' }),
  })
  .meta({ id: 'ForecastRecord' });

export const lessonsDocument = z
  .strictObject({
    schema: z.literal('benchtide.lessons/2'),
    lessons: z.array(lesson),
    onlyDone: onlyDoneOnes,
    record: forecastRecord.optional().meta({ description: 'Absent: no forecast has come true yet' }),
  })
  .meta({ id: 'LessonsDocument' });

/** Weighings of a lot while it cures, and what they say. */
export const cureByWeight = z
  .strictObject({
    weighings: z.int(),
    freshG: band.optional(),
    settledG: band.optional(),
    readyDays: band.optional().meta({ description: 'Days from unmoulding' }),
    settled: z.boolean().meta({ description: 'The lot has stopped losing weight by the workshop’s rule' }),
    lossPercentPerWeek: z.number().meta({ description: 'Cured once it loses less than this in a week' }),
    note: cureNote.optional().meta({ description: 'Why there is no forecast from the weighings yet' }),
  })
  .meta({ id: 'CureByWeight' });

/** The weighings of a lot one by one, and the mass of a piece that they lead to expect. */
export const cureCurve = z
  .strictObject({
    startedAt: instant
      .nullable()
      .meta({ description: 'When the last of its parts began to cure; null while one has not' }),
    cure: cureByWeight,
    byWeight: z.boolean().meta({ description: 'Whether the weighings say when it is ready; else its clock' }),
    readings: z.array(
      z.strictObject({
        entry: text.meta({ description: 'Of the log' }),
        at: instant,
        days: z.number().meta({ description: 'From the start of the cure' }),
        pieces: z.int(),
        massG: z.number().meta({ description: 'All of them together' }),
        pieceG: z.number(),
        counts: z.boolean().meta({
          description: 'false: something was put on the pieces after it, or it is far off all others',
        }),
      }),
    ),
    curve: z
      .array(z.strictObject({ days: z.number(), pieceG: band }))
      .meta({ description: 'Mass of one piece by day, past and to come; empty while there is no fit' }),
  })
  .meta({ id: 'CureCurve' });

const chance = z.number().min(0).max(1);

/** What becomes of a poured part by its own heat. */
export const partHeat = z
  .strictObject({
    gel: z
      .strictObject({ whole: chance, part: chance, none: chance })
      .meta({ description: 'Chances by its heat alone, whatever the recipe asks for' }),
    asked: z.enum(gels).meta({ description: 'What the recipe asks for' }),
    isMade: z
      .boolean()
      .meta({ description: 'It was cooked or melted again and only cools: no gel is to come' }),
    kept: z.enum(keptWays).meta({ description: 'How its mould stands after the pour, told or taken' }),
    keptElse: z
      .array(
        z.strictObject({
          kept: z.enum(keptWays),
          whole: chance,
          part: chance,
          none: chance,
          overheats: chance,
        }),
      )
      .meta({ description: 'The chances for each way a mould may stand; none for what is made already' }),
    overheats: chance,
    hottestC: band.meta({ description: 'The highest temperature of its middle, °C' }),
    hottestMin: z.number().meta({ description: 'minutes from the pour; 0 where it only cools' }),
    cooledMin: z.number().meta({ description: 'minutes from the pour until it can be handled; 0 at once' }),
    aroundC: z.number().meta({ description: 'Of the room, or of the refrigerator, °C' }),
    gelC: z.number().meta({ description: 'From here on it is gel, °C' }),
    fatsC: z.number().meta({ description: 'So warm the fats have to be for lye as warm as the room, °C' }),
    curve: z
      .array(z.strictObject({ min: z.number(), middleC: z.number(), edgeC: z.number() }))
      .max(100)
      .meta({ description: 'As is likely, from the pour until it has cooled' }),
    notes: z.array(heatNote).meta({ description: 'All of it in sentences, and what would change it' }),
  })
  .meta({ id: 'PartHeat' });

/** Every clock of one or several runs, with reasons, whether the pieces can be filled in time, and what moves them. */
export const clocksDocument = z
  .strictObject({
    schema: z.literal('benchtide.clocks/2'),
    runs: z.array(
      z.strictObject({
        run: key,
        title: text,
        parts: z.array(
          z.strictObject({
            part: key,
            title: text,
            clocks: z.array(clockForecast),
            filling: fillingTime.nullable(),
            moves: z.array(clockMove),
            heat: partHeat.nullable().meta({ description: 'null for what is not cast' }),
            risks: z.array(risk),
          }),
        ),
        cure: cureByWeight,
        lessons: z.array(lesson),
        onlyDone: onlyDoneOnes,
        record: forecastRecord
          .optional()
          .meta({ description: 'Absent: it was not asked for, or no forecast has come true yet' }),
      }),
    ),
  })
  .meta({ id: 'ClocksDocument' });

const clockState = z
  .strictObject({
    state: z.enum(soapStates),
    closes: z.boolean(),
    clock: z.enum(['lye', 'fats', 'batter', 'paste', 'set', 'cure']),
    pace: z.enum(paces),
    baseMin: z.number(),
    sigma: z.number(),
    evidence,
  })
  .meta({ id: 'ClockState' });

export const clockRules = z
  .strictObject({ states: z.array(clockState), rules: z.array(clockRule), floors: z.array(clockFloor) })
  .meta({ id: 'ClockRules' });

export type ClockForecast = z.infer<typeof clockForecast>;
export type StageForecast = z.infer<typeof stageForecast>;
export type PartHeat = z.infer<typeof partHeat>;
export type FillingTime = z.infer<typeof fillingTime>;
export type Lesson = z.infer<typeof lesson>;
export type ForecastRecord = z.infer<typeof forecastRecord>;
export type OnlyDone = z.infer<typeof onlyDone>;
export type LessonsDocument = z.infer<typeof lessonsDocument>;
export type CureByWeight = z.infer<typeof cureByWeight>;
export type CureCurve = z.infer<typeof cureCurve>;
export type ClocksDocument = z.infer<typeof clocksDocument>;
export type ClockRules = z.infer<typeof clockRules>;
