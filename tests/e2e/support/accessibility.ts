import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe has to say against the page that is of level serious or critical, one line each. */
export async function seriousFaults(page: Page): Promise<string[]> {
  // Through the protocol, which the page's own content security policy does not concern.
  await page.evaluate(axe);
  return page.evaluate(async (values) => {
    interface Result {
      readonly violations: readonly {
        readonly id: string;
        readonly impact: string | null;
        readonly help: string;
        readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
      }[];
    }
    const { axe: runner } = globalThis as unknown as {
      axe: { run(options: unknown): Promise<Result> };
    };
    const { violations } = await runner.run({ runOnly: { type: 'tag', values } });
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, help, nodes }) =>
        nodes.map((node) => `${id}: ${help}: ${node.html.slice(0, 200)} ${node.failureSummary ?? ''}`),
      );
  }, rules);
}

/** The same of a page in full height, or what a bar fixed at the bottom covers just now counts as too small to touch. */
export async function faultsInFullHeight(page: Page): Promise<string[]> {
  const { width, height } = page.viewportSize()!;
  const whole = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: whole });
  const faults = await seriousFaults(page);
  await page.setViewportSize({ width, height });
  return faults;
}
