import type { Schemas } from '../../api/client.js';
import type { Value } from '../../form/values.js';

/**
 * What an own fat begins with when it is one of those that are there already: all of its figures but the
 * saponification value, which the certificate of the lot gives, and a source of its own.
 * @param title and behaviour in the language of the page
 */
export function ownFrom(
  shipped: Omit<Schemas['ShippedFat'], 'aliases'>,
  title: string,
  behaviour: string,
): Value {
  const { inci, soapInci, kind, iodine, unsaponifiablePercent, fattyAcidsPercent, densityGPerMl } = shipped;
  return {
    title,
    kind,
    ...(inci === undefined ? {} : { inci }),
    ...(soapInci === undefined ? {} : { soapInci }),
    ...(iodine === undefined ? {} : { iodine: { ...iodine } }),
    ...(unsaponifiablePercent === undefined ? {} : { unsaponifiablePercent: { ...unsaponifiablePercent } }),
    fattyAcidsPercent: rounded(fattyAcidsPercent),
    densityGPerMl,
    expansionGPerMlPerC: shipped.expansionGPerMlPerC,
    behaviour,
  };
}

/** As a sheet would list them: to a tenth, and without traces. */
function rounded(profile: Readonly<Record<string, number>>): Record<string, number> {
  const tenths = Object.entries(profile).map(([acid, share]) => [acid, Math.round(share * 10) / 10] as const);
  return Object.fromEntries(tenths.filter(([, share]) => share > 0));
}

/** Fatty acids as sheets list them, by carbons and double bonds. */
export const fattyAcids = [
  'C4:0',
  'C6:0',
  'C8:0',
  'C10:0',
  'C12:0',
  'C14:0',
  'C16:0',
  'C16:1',
  'C18:0',
  'C18:1',
  'C18:2',
  'C18:3',
  'C20:0',
  'C20:1',
  'C22:0',
  'C22:1',
  'ricinoleic',
  'abietic',
] as const;
export type FattyAcid = (typeof fattyAcids)[number];
