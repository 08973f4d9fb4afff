import { listAt, valueAt, type Value } from '../form/values.js';

/** Short names in use in one of the lists of what is edited. */
export function keysIn(content: Value, list: string): string[] {
  return listAt(content, [list]).flatMap((each) => {
    const key = valueAt(each, ['key']);
    return typeof key === 'string' ? [key] : [];
  });
}
