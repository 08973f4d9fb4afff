import type { Page } from 'playwright-core';

/** Attributes that are read out or shown. */
const spoken = [
  'aria-label',
  'aria-description',
  'aria-valuetext',
  'aria-roledescription',
  'title',
  'placeholder',
  'alt',
];

/**
 * All that a page says, a line each: its visible text, what stands in its fields, and how its controls are called.
 * What is marked as no text of the page is left out: `translate="no"`, and whatever is in a language of its own (`lang`).
 */
export async function textsOf(page: Page): Promise<string[]> {
  return page.evaluate((names) => {
    const root = document.documentElement;
    const isOther = (element: Element): boolean => {
      const marked = element.closest('[translate="no"], [lang]');
      return marked !== null && marked !== root;
    };
    const hidden = [...document.body.querySelectorAll<HTMLElement>('*')].filter(isOther);
    const before = hidden.map(({ style }) => style.display);
    hidden.forEach(({ style }) => style.setProperty('display', 'none', 'important'));
    const lines = document.body.innerText.split('\n');
    hidden.forEach(({ style }, i) => (style.display = before[i] ?? ''));
    lines.push(document.title);
    for (const element of document.body.querySelectorAll('*')) {
      if (isOther(element)) continue;
      for (const name of names) lines.push(element.getAttribute(name) ?? '');
      if (element instanceof HTMLOptionElement) lines.push(element.text);
      if (element instanceof HTMLInputElement && ['text', 'search'].includes(element.type))
        lines.push(element.value);
      if (element instanceof HTMLTextAreaElement) lines.push(element.value);
      if (element instanceof SVGTextElement && element.checkVisibility()) lines.push(element.textContent);
    }
    return [...new Set(lines.map((line) => line.trim()).filter((line) => line !== ''))];
  }, spoken);
}

/** Opens everything on the page that can be opened, also what comes to light by that, and of which one is open at a time. */
export async function openDetails(page: Page): Promise<void> {
  for (let round = 0; round < 5; round++) {
    const closed = await page.evaluate(() => {
      document.querySelectorAll('details[name]').forEach((each) => each.removeAttribute('name'));
      const all = [...document.querySelectorAll<HTMLDetailsElement>('details:not([open])')];
      all.forEach((each) => (each.open = true));
      return all.length;
    });
    if (closed === 0) return;
    await settled(page);
  }
}

/** Waits until nothing is on its way any more. */
export async function settled(page: Page): Promise<void> {
  await page
    .getByText(/^(Fetching|Wird geholt) …$/)
    .first()
    .waitFor({ state: 'hidden' });
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve(null)))),
  );
}
