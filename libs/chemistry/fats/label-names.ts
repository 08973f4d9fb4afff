import type { FatFacts } from './fat-facts.js';

/** INCI names of a fat for the list of ingredients; which way the list is written, the maker chooses. */
export interface LabelNames {
  /** As put in. */
  readonly inci?: string;
  /** As the soaps of it, one for each alkali; none for a wax, which keeps its own name. */
  readonly soapInci?: string[];
}

/** @param kohSharePercent share of the alkali that is KOH: above 0 there is potassium soap, below 100 sodium soap */
export function labelNames({ inci, soapInci }: FatFacts, kohSharePercent: number): LabelNames {
  return {
    ...(inci !== undefined && { inci }),
    ...(soapInci !== undefined && {
      soapInci: [
        ...(kohSharePercent < 100 ? [soapInci] : []),
        ...(kohSharePercent > 0 ? [soapInci.replace(/^Sodium\b/, 'Potassium')] : []),
      ],
    }),
  };
}
