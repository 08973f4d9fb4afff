import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { isRequired } from '../../support/required.js';

const programs = ['chromium', 'chromium-browser', 'google-chrome'];

/**
 * A real Chromium, as installed on this machine.
 * @param hosts names that it is to find on this machine, as if it were another one of the home network
 * @returns null, and a printed warning, where there is none; tests that need it are then skipped
 * @throws when there is none although BENCHTIDE_REQUIRE asks for `chromium`
 */
export async function startBrowser(...hosts: readonly string[]): Promise<Browser | null> {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const executablePath = folders
    .flatMap((folder) => programs.map((name) => join(folder, name)))
    .find(existsSync);
  const rules = hosts.map((host) => `MAP ${host} 127.0.0.1`).join(',');
  const args = ['--no-sandbox', ...(rules === '' ? [] : [`--host-resolver-rules=${rules}`])];
  if (executablePath !== undefined) return chromium.launch({ executablePath, args });
  const what = `There is no Chromium on the PATH (${programs.join(', ')})`;
  if (isRequired('chromium')) throw new Error(`${what}, and BENCHTIDE_REQUIRE asks for it.`);
  console.warn(`${what}: the tests in a browser are skipped.`);
  return null;
}
