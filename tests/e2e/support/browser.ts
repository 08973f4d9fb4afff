import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { isRequired } from '../../support/required.js';

const names = ['chromium', 'chromium-browser', 'google-chrome'];

/**
 * A real Chromium, as installed on this machine.
 * @returns null, and a printed warning, where there is none; tests that need it are then skipped
 * @throws when there is none although BENCHTIDE_REQUIRE asks for `chromium`
 */
export async function startBrowser(): Promise<Browser | null> {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const executablePath = folders
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find(existsSync);
  if (executablePath !== undefined) return chromium.launch({ executablePath, args: ['--no-sandbox'] });
  const what = `There is no Chromium on the PATH (${names.join(', ')})`;
  if (isRequired('chromium')) throw new Error(`${what}, and BENCHTIDE_REQUIRE asks for it.`);
  console.warn(`${what}: the tests in a browser are skipped.`);
  return null;
}
