import { fieldId } from './form-context.js';
import type { Path } from './values.js';

/** What the field at a path is called on the page; undefined where it has none. */
export function nameOf(path: Path): string | undefined {
  const label = document.querySelector(`label[for="${fieldId(path)}"]`)?.textContent?.trim();
  return label === '' ? undefined : label;
}
