import { describe, expect, it } from 'vitest';
import { findTimeZone, knownTimeZones } from './time-zones.js';

describe('finding a time zone', () => {
  const zones = knownTimeZones();

  it('knows those of the browser, and UTC', () => {
    expect(zones).toContain('Europe/Dublin');
    expect(zones).toContain('UTC');
  });

  it('takes the name in any case, or the city alone', () => {
    expect(findTimeZone('europe/dublin ', zones)).toBe('Europe/Dublin');
    expect(findTimeZone('America/New York', zones)).toBe('America/New_York');
    expect(findTimeZone('new york', zones)).toBe('America/New_York');
  });

  it('takes nothing that is none or could be several', () => {
    expect(findTimeZone('', zones)).toBeUndefined();
    expect(findTimeZone('Atlantis', zones)).toBeUndefined();
    expect(findTimeZone('east', ['A/East', 'B/East'])).toBeUndefined();
  });
});
