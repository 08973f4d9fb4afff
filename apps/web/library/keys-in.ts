import { listAt, valueAt, type Path, type Value } from '../form/values.js';

/** Short names in use in one of the lists of what is edited. */
export function keysAt(content: Value, path: Path): string[] {
  return listAt(content, path).flatMap((each) => {
    const key = valueAt(each, ['key']);
    return typeof key === 'string' ? [key] : [];
  });
}
