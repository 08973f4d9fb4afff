import { expect, it } from 'vitest';
import { isLoopback } from './host-allowlist.js';

it.each(['localhost', '127.0.0.1', '127.255.255.254', '::1', '[::1]'])(
  'takes %s for this machine',
  (address) => {
    expect(isLoopback(address)).toBe(true);
  },
);

it.each([
  ...['127.999.999.999', '127.0.0.256', '127.1', '0127.0.0.1', '127.0.0.1.', '127.0.0.1.example', ''],
  ...['10.0.0.1', '0.0.0.0', 'localhost.example'],
])('does not take %s for this machine', (address) => {
  expect(isLoopback(address)).toBe(false);
});
