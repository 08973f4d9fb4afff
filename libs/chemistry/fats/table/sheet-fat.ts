import type { Evidence } from '#units';
import type { FatFacts, FatKind, Limits } from '../fat-facts.js';
import { triglycerideExpansionGPerMlPerC } from '../fat-density.js';
import { borrowedExpansion, expansionOfTriglycerides } from './sources.js';

/** A fat as a supplier's sheet or the maker's own measurement describes it. */
export interface SheetFat {
  readonly key: string;
  readonly title: string;
  readonly inci?: string | undefined;
  readonly soapInci?: string | undefined;
  readonly kind?: FatKind | undefined;
  readonly saponificationMgKohPerG: Limits & { readonly used: number };
  readonly iodine?: Limits | undefined;
  readonly unsaponifiablePercent?: Limits | undefined;
  readonly fattyAcidsPercent: Readonly<Record<string, number>>;
  readonly densityGPerMl: number;
  readonly expansionGPerMlPerC?: number | undefined;
  readonly behaviour?: string | undefined;
  readonly confirmed?: boolean | undefined;
  /** The saponification value is that of the lot in use, from its certificate or a titration. */
  readonly ofThisLot?: boolean | undefined;
  readonly source: string;
}

/** Lots lie within about 2 % of a single figure that a sheet gives for all of them: common practice, no source. */
const LOT_WIDTH = 0.02;

/** What a fat may have at all; a width must not lead beyond it, mg KOH per g. */
const possible = { low: 20, high: 600 } as const;

/** The width of a single figure: none of one for the lot in use, else what lots differ by. */
function withWidth({
  saponificationMgKohPerG: value,
  ofThisLot = false,
}: SheetFat): SheetFat['saponificationMgKohPerG'] {
  const { low, used, high } = value;
  if (ofThisLot || low !== used || high !== used || used < possible.low || used > possible.high) return value;
  return {
    low: Math.max(possible.low, used * (1 - LOT_WIDTH)),
    used,
    high: Math.min(possible.high, used * (1 + LOT_WIDTH)),
  };
}

/**
 * The facts of a maker's own fat. What the sheet leaves out: it is a triglyceride, and expands like one;
 * a wax or a fatty acid borrows that expansion and says so.
 */
export function fromSheet(fat: SheetFat): FatFacts {
  const { kind = 'triglyceride', expansionGPerMlPerC, source, ofThisLot: _lot, ...given } = fat;
  const { inci, soapInci, iodine, unsaponifiablePercent, behaviour, confirmed, ...needed } = given;
  const sheet: Evidence = { kind: 'published', source };
  const assumed = kind === 'triglyceride' ? expansionOfTriglycerides : borrowedExpansion;
  return {
    ...needed,
    saponificationMgKohPerG: withWidth(fat),
    kind,
    expansionGPerMlPerC: expansionGPerMlPerC ?? triglycerideExpansionGPerMlPerC,
    ...(inci === undefined ? {} : { inci }),
    ...(soapInci === undefined ? {} : { soapInci }),
    ...(iodine === undefined ? {} : { iodine }),
    ...(unsaponifiablePercent === undefined ? {} : { unsaponifiablePercent }),
    ...(behaviour === undefined ? {} : { behaviour }),
    ...(confirmed === undefined ? {} : { confirmed }),
    evidence: {
      saponification: sheet,
      density: sheet,
      expansion: expansionGPerMlPerC === undefined ? assumed : sheet,
      ...(Object.keys(fat.fattyAcidsPercent).length === 0 ? {} : { fattyAcids: sheet }),
      ...(inci === undefined ? {} : { inci: sheet }),
      ...(soapInci === undefined ? {} : { soapInci: sheet }),
      ...(iodine === undefined ? {} : { iodine: sheet }),
      ...(unsaponifiablePercent === undefined ? {} : { unsaponifiable: sheet }),
      ...(behaviour === undefined ? {} : { behaviour: sheet }),
    },
  };
}
