/**
 * Where another device finds the program: as this page does, unless that is an address that means each machine itself.
 * @param origin of this page
 * @param addresses of the home network, as the program knows them
 */
export function addressesElsewhere(origin: string, addresses: readonly string[]): readonly string[] {
  const { hostname } = new URL(origin);
  const isHere = /^(localhost|127\.[\d.]+|\[::1\])$/.test(hostname);
  return isHere ? addresses : [origin];
}
