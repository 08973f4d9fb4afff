/** What kinds of devices are called. */
export interface DeviceWords {
  readonly phone: string;
  readonly tablet: string;
  readonly computer: string;
}

const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/Edg(A|iOS)?\//, 'Edge'],
  [/Firefox|FxiOS/, 'Firefox'],
  [/SamsungBrowser/, 'Samsung Internet'],
  [/Chrome|CriOS/, 'Chrome'],
  [/Safari/, 'Safari'],
];

/**
 * A name to tell devices apart in the list, such as “Phone, Chrome”. No more than the browser says of itself anyway, and nothing
 * that would know the device again; the user can change it.
 * @param agent what the browser calls itself
 */
export function deviceName(agent: string, words: DeviceWords): string {
  const kind = /iPad|Tablet|Android(?!.*Mobile)/.test(agent)
    ? words.tablet
    : /Mobi|iPhone/.test(agent)
      ? words.phone
      : words.computer;
  const browser = BROWSERS.find(([sign]) => sign.test(agent))?.[1];
  return browser === undefined ? kind : `${kind}, ${browser}`;
}
