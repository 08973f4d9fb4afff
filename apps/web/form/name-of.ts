import { fieldId } from './form-context.js';
import type { Path } from './values.js';

/** What the field at a path is called on the page; undefined where it has none. @param scope that of its form */
export function nameOf(path: Path, scope?: string): string | undefined {
  const label = document.querySelector(`label[for="${fieldId(path, scope)}"]`)?.textContent?.trim();
  return label === '' ? undefined : label;
}
