import type { Message, Risk } from '#contract';
import type { Reader } from './reader.js';
import { textsFor } from './texts.js';
import type { Texts, Words } from './words.js';

/**
 * A copy of a document in which every message has its text beside it, and a risk what would help. A message is an object whose `code` the words
 * know; whatever else has a `code` stays as it is.
 * @param document as JSON would hold it
 * @param reader a document that names its `timeZone` is read in that; the reader's is for all others
 */
export function withTexts<T>(document: T, reader: Reader, words: Words): T {
  return copied(document, textsFor(reader, words), reader, words) as T;
}

function copied(value: unknown, texts: Texts, reader: Reader, words: Words): unknown {
  if (typeof value !== 'object' || value === null || value instanceof Date) return value;
  if (Array.isArray(value)) return value.map((item) => copied(item, texts, reader, words));
  const fields = value as Readonly<Record<string, unknown>>;
  const zone = fields['timeZone'];
  const within =
    typeof zone === 'string' && zone !== reader.timeZone ? { ...reader, timeZone: zone } : reader;
  const inZone = within === reader ? texts : textsFor(within, words);
  const copy: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) copy[name] = copied(field, inZone, within, words);
  if (isMessage(fields, words)) copy['text'] = inZone.of(fields);
  if (isRisk(fields, words)) copy['remedy'] = inZone.remedyOf(fields);
  return copy;
}

function isMessage(fields: object, words: Words): fields is Message {
  return 'code' in fields && typeof fields.code === 'string' && Object.hasOwn(words.messages, fields.code);
}

function isRisk(fields: object, words: Words): fields is Risk {
  return isMessage(fields, words) && Object.hasOwn(words.riskRemedies, fields.code);
}
