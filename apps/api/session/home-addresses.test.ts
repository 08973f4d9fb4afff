import type { NetworkInterfaceInfo } from 'node:os';
import { expect, it } from 'vitest';
import { homeAddresses } from './home-addresses.js';

const one = (address: string, internal = false): NetworkInterfaceInfo =>
  ({ address, internal, family: 'IPv4' }) as NetworkInterfaceInfo;
const interfaces = {
  lo: [one('127.0.0.1', true)],
  wlan0: [one('192.168.178.31'), one('fe80::1')],
  eth0: [one('10.0.0.4')],
  wan: [one('203.0.113.9'), one('172.32.0.1')],
};

it.each([
  ['127.0.0.1', []],
  ['::1', []],
  ['0.0.0.0', ['http://192.168.178.31:4780', 'http://10.0.0.4:4780']],
  ['::', ['http://192.168.178.31:4780', 'http://10.0.0.4:4780']],
  ['192.168.178.31', ['http://192.168.178.31:4780']],
  ['fd00::5', ['http://[fd00::5]:4780']],
])('a program that listens on %s is found at %s', (address, found) => {
  expect(homeAddresses({ address, port: 4780 }, interfaces)).toEqual(found);
});
