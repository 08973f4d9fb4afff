import { expect, it } from 'vitest';
import type { Issue } from '#units';
import { textsFor } from './texts.js';
import { en } from './en/index.js';

const texts = textsFor({ language: 'en', units: 'metric', timeZone: 'UTC' }, en);

const superfat = (found: number, isExcessIntended: boolean): string => {
  const accepted = { kind: 'range', low: isExcessIntended ? -5 : 0, high: 25, unit: '%' } as const;
  const told = {
    path: ['superfatPercent'],
    value: found,
    accepted,
    found,
    unit: '%',
    isExcessIntended,
  } as const;
  return texts.issue({ code: 'lye.superfat-out-of-range', ...told } satisfies Issue);
};

/** Too much fat is no excess of lye, whatever else was said of the lye. */
it.each([
  [26, false, /rancid/, /burns|more lye/],
  [26, true, /rancid/, /burns|more lye/],
  [-1, false, /burns/, /rancid/],
  [-6, true, /more lye/, /rancid/],
])('says why a superfat of %d is refused', (found, isExcessIntended, why, whyNot) => {
  const said = superfat(found, isExcessIntended);
  expect(said).toMatch(why);
  expect(said).not.toMatch(whyNot);
});
