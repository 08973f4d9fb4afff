import { expect, it } from 'vitest';
import { deviceName } from './device-name.js';

const words = { phone: 'Phone', tablet: 'Tablet', computer: 'Computer' };

it.each([
  [
    'Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/131.0 Mobile Safari/537.36',
    'Phone, Chrome',
  ],
  [
    'Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/131.0 Safari/537.36',
    'Tablet, Chrome',
  ],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 Version/18.1 Mobile/15E148 Safari/604.1',
    'Phone, Safari',
  ],
  ['Mozilla/5.0 (X11; Linux x86_64; rv:133.0) Gecko/20100101 Firefox/133.0', 'Computer, Firefox'],
  ['Mozilla/5.0 (Windows NT 10.0) AppleWebKit/537.36 Chrome/131.0 Safari/537.36 Edg/131.0', 'Computer, Edge'],
  ['', 'Computer'],
])('%s is called %s', (agent, name) => {
  expect(deviceName(agent, words)).toBe(name);
});
