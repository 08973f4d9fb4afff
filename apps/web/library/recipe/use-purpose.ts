import { useState } from 'react';
import type { Mould } from '#contract';
import type { Purpose } from './preview-file.js';

/** A careful hand with a jug; common practice, no source. */
const USUAL_SECONDS = 8;
export const USUAL_ML = 1000;

/** What the batch is made for: the first mould there is, all of its cavities, until something else is chosen. */
export function usePurpose(moulds: readonly Mould[]): readonly [Purpose, (purpose: Purpose) => void] {
  const [chosen, setChosen] = useState<Purpose | null>(null);
  const first = moulds[0];
  const usual = first === undefined ? ({ by: 'volume', ml: USUAL_ML } as const) : allOf(first);
  return [chosen ?? usual, setChosen];
}

export function allOf({ key, cavities }: Mould): Purpose {
  return { by: 'mould', mould: key, cavities, perCavityS: USUAL_SECONDS };
}
