import { isIPv4 } from 'node:net';
import type { NetworkInterfaceInfo } from 'node:os';
import { isLoopback } from '../access/host-allowlist.js';

/** Private addresses of home networks: 10/8, 172.16/12 and 192.168/16 (RFC 1918). */
const PRIVATE = /^(10\.|192\.168\.|172\.(1[6-9]|2\d|3[01])\.)/;
const ALL = new Set(['0.0.0.0', '::']);

/**
 * Where another device of the home network finds this program.
 * @param bound what it listens on
 * @param interfaces of this machine, as the system lists them
 * @returns addresses of pages; none where it listens on this machine alone, or the machine has no address of a home network
 */
export function homeAddresses(
  bound: { readonly address: string; readonly port: number },
  interfaces: Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>,
): string[] {
  const { address, port } = bound;
  if (isLoopback(address)) return [];
  const found = ALL.has(address)
    ? Object.values(interfaces).flatMap((each = []) =>
        each.filter((one) => !one.internal && PRIVATE.test(one.address)).map((one) => one.address),
      )
    : [address];
  return [...new Set(found)].map((host) => `http://${isIPv4(host) ? host : `[${host}]`}:${String(port)}`);
}
