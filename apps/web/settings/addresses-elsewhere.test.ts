import { expect, it } from 'vitest';
import { addressesElsewhere } from './addresses-elsewhere.js';

const home = ['http://192.168.178.31:4780'];

it.each(['http://127.0.0.1:4780', 'http://localhost:4780', 'http://[::1]:4780'])(
  'of a page at %s is an address of the home network, or none',
  (origin) => {
    expect(addressesElsewhere(origin, home)).toEqual(home);
    expect(addressesElsewhere(origin, [])).toEqual([]);
  },
);

it('of a page that came over the network is the address of that page', () => {
  expect(addressesElsewhere('https://bench.example', home)).toEqual(['https://bench.example']);
  expect(addressesElsewhere('http://localhost.example', home)).toEqual(['http://localhost.example']);
});
