import { z } from 'zod';
import { runFile } from '#contract';

/** The JSON Schema of a run file as it may be written: texts with units, and what may be left out. */
export function fileSchema(): string {
  return `${JSON.stringify(z.toJSONSchema(runFile, { io: 'input', unrepresentable: 'any' }), null, 2)}\n`;
}
