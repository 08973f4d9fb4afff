/**
 * Parts of the suite that need a program of the machine are left out where it is missing, unless they are
 * named here: BENCHTIDE_REQUIRE=redis,chromium.
 */
export function isRequired(part: 'redis' | 'chromium'): boolean {
  return (process.env['BENCHTIDE_REQUIRE'] ?? '').split(',').includes(part);
}
