import { z } from 'zod';

/**
 * Reads what was stored under an older contract: what was added since takes its default. A bound that came later does
 * not make what is kept unreadable; it is met when the thing is changed next. What is of another kind than the schema
 * says is a fault of the program, or of the migration that should have seen to it.
 * @throws ZodError where a value has another kind or shape
 */
export function readStored<T extends z.ZodType>(schema: T, stored: unknown): z.output<T> {
  // Unlike `parse`, this keeps the value beside the issues, and each issue says whether it spoils the value.
  const read = schema._zod.run({ value: stored, issues: [] }, { async: false });
  if (read instanceof Promise) throw new Error('schemas of stored content do not wait');
  const spoilt = read.issues.some((issue) => issue.continue !== true || issue.code === 'unrecognized_keys');
  if (!spoilt) return read.value as z.output<T>;
  return schema.parse(stored);
}
