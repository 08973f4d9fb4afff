/** What a run file of today calls itself. */
export const RUN_FILE = 'benchtide.run-file/3';
/** The form before, which is still read. */
const EARLIER = 'benchtide.run-file/2';

/** Whether a file was written in the form before: its stages did not yet wait for the soap by themselves. */
export function isEarlierRunFile(content: unknown): boolean {
  return isRecord(content) && content['schema'] === EARLIER;
}

/**
 * A file of the form before as one of today; anything else as it is. Stages of the form before had only the waits that
 * were written down; read as one of today, their kinds bring the others.
 * @param content of a file, not checked yet; not changed
 */
export function asLatestRunFile(content: unknown): unknown {
  if (!isRecord(content) || !isEarlierRunFile(content)) return content;
  return { ...content, schema: RUN_FILE };
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
