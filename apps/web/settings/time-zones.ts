/** IANA names of the time zones that this browser knows, UTC among them. */
export function knownTimeZones(): readonly string[] {
  const zones = Intl.supportedValuesOf('timeZone');
  return zones.includes('UTC') ? zones : [...zones, 'UTC'];
}

/**
 * The time zone that was typed.
 * @param text in any case, with blanks for underscores
 * @returns its name as it is written, or undefined when there is none or it could be several
 */
export function findTimeZone(text: string, zones: readonly string[]): string | undefined {
  const typed = plain(text);
  if (typed === '') return undefined;
  const exact = zones.find((zone) => plain(zone) === typed);
  if (exact !== undefined) return exact;
  const cities = zones.filter((zone) => plain(zone.split('/').at(-1) ?? '') === typed);
  return cities.length === 1 ? cities[0] : undefined;
}

function plain(text: string): string {
  return text.trim().toLowerCase().replaceAll('_', ' ');
}
