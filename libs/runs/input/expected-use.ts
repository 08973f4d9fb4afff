import { beadMl, coatMl, freshVolume, weighedMl } from '#chemistry';
import type { BatchPart, MeltPart, UseBasis } from '#contract';

/** What a part needs besides itself to say how much a piece takes. */
export interface UseSurroundings {
  /** Of the mould it is cast in. */
  readonly cavityMl?: number | undefined;
  /** Of the batter or the melted base. */
  readonly densityGPerMl: number;
}

export interface ExpectedUse {
  readonly meanMl: number;
  /** One standard deviation of that mean. */
  readonly averageErrorPercent: number;
  /** How the figure came about, for the batch sheet. */
  readonly from: UseBasis;
}

/**
 * What one piece takes of a part before anything was logged, and how well that is known.
 * The defaults of the latter are common practice, no source: a cavity is as good as its water weighing, a figure in
 * millilitres was measured on a few pieces, and a coat or a bead worked out from its size is a guess.
 */
export function expectedUse(part: BatchPart | MeltPart, around: UseSurroundings): ExpectedUse {
  const { meanMl, averageErrorPercent, from } = workedOut(part, around);
  return { meanMl, averageErrorPercent: part.averageErrorPercent ?? averageErrorPercent, from };
}

function workedOut(part: BatchPart | MeltPart, { cavityMl, densityGPerMl }: UseSurroundings): ExpectedUse {
  const { amount, perPieceMl } = part;
  if (amount === undefined) {
    if (perPieceMl === undefined) throw new Error(`${part.key} has no amount: check it first`);
    return { meanMl: perPieceMl, averageErrorPercent: 3, from: { code: 'use.written', ml: perPieceMl } };
  }
  switch (amount.by) {
    case 'cavity': {
      if (cavityMl === undefined) throw new Error(`${part.key} has no cavity`);
      return {
        meanMl: (((cavityMl * amount.fillPercent) / 100) * part.cavitiesPerPiece) / part.piecesPerCavity,
        averageErrorPercent: 1,
        from: {
          ...{ code: 'use.cavity', fillPercent: amount.fillPercent, cavityMl },
          ...(part.cavitiesPerPiece > 1 && { cavities: part.cavitiesPerPiece }),
        },
      };
    }
    case 'finished':
      return {
        meanMl: freshVolume(amount.ml, amount.shrinkagePercent),
        averageErrorPercent: 3,
        from: { code: 'use.finished', ml: amount.ml, shrinkagePercent: amount.shrinkagePercent },
      };
    case 'coat':
      return {
        meanMl: coatMl(amount),
        averageErrorPercent: 10,
        from: { code: 'use.coat', areaCm2: amount.areaCm2, thicknessMm: amount.thicknessMm },
      };
    case 'bead':
      return {
        meanMl: beadMl(amount),
        averageErrorPercent: 10,
        from: { code: 'use.bead', lengthMm: amount.lengthMm, widthMm: amount.widthMm },
      };
    case 'bead-section':
      return {
        meanMl: beadMl(amount),
        averageErrorPercent: 10,
        from: { code: 'use.bead-section', lengthMm: amount.lengthMm, sectionMm2: amount.sectionMm2 },
      };
    case 'weighing':
      return {
        meanMl: weighedMl(amount.grams / amount.pieces, densityGPerMl),
        // The spread of one piece shrinks with the number weighed; the scales and the hand of that day stay.
        averageErrorPercent: Math.hypot(part.spreadPercent / Math.sqrt(amount.pieces), 1),
        from: { code: 'use.weighed', pieces: amount.pieces, massG: amount.grams },
      };
  }
}
