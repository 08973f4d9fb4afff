import type { Page } from 'playwright-core';

/** What a fingertip needs, in CSS pixels (WCAG 2.2, 2.5.5). */
const TOUCH = 44;

/**
 * Everything on a page that can be tapped and is smaller than a fingertip, a line each. Links within a sentence are as high as its
 * lines (WCAG 2.2, 2.5.5, inline); what a label belongs to counts with its label.
 */
export function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate((touch) => {
    const all = 'a[href], button, input, select, textarea, summary, [role="button"], [role="tab"]';
    const isShown = (element: Element): boolean =>
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
      element.closest('.visually-hidden, .skip, [aria-hidden="true"], svg') === null;
    const isInline = (element: Element): boolean => {
      if (!(element instanceof HTMLAnchorElement) || getComputedStyle(element).display !== 'inline')
        return false;
      const around = element.parentElement?.textContent?.trim() ?? '';
      return around.length > (element.textContent?.trim().length ?? 0) + 3;
    };
    const boxOf = (element: Element): DOMRect => {
      const label =
        element instanceof HTMLInputElement && ['checkbox', 'radio'].includes(element.type)
          ? element.labels?.[0]
          : undefined;
      return (label ?? element).getBoundingClientRect();
    };
    return [...document.querySelectorAll(all)].flatMap((element) => {
      if (!isShown(element) || isInline(element)) return [];
      const { width, height } = boxOf(element);
      if (width === 0 || (width >= touch - 0.5 && height >= touch - 0.5)) return [];
      const name = element.getAttribute('aria-label') ?? element.textContent?.trim().slice(0, 40);
      const of = element.tagName.toLowerCase();
      return `${of} “${name ?? ''}” ${String(Math.round(width))}×${String(Math.round(height))} in .${element.parentElement?.className ?? ''}`;
    });
  }, TOUCH);
}
