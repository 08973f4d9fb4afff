import type { Evidence, Message, Risk } from '#contract';
import type { Reader } from './reader.js';
import { textsFor } from './texts.js';
import type { Texts, Words } from './words.js';

/**
 * A copy of a document in which every message has its text beside it, and a risk what would help; likewise evidence, shipped
 * fats, and whatever is weighed or bought, how they are called. A message is an object whose `code` the words know;
 * whatever else has a `code` stays as it is.
 * @param document as JSON would hold it
 * @param reader a document that names its `timeZone` is read in that; the reader's is for all others
 */
export function withTexts<T>(document: T, reader: Reader, words: Words): T {
  return copied(document, textsFor(reader, words), reader, words) as T;
}

function copied(value: unknown, texts: Texts, reader: Reader, words: Words, inMessage = false): unknown {
  if (typeof value !== 'object' || value === null || value instanceof Date) return value;
  if (Array.isArray(value)) return value.map((item) => copied(item, texts, reader, words, inMessage));
  const fields = value as Readonly<Record<string, unknown>>;
  const zone = fields['timeZone'];
  const within =
    typeof zone === 'string' && zone !== reader.timeZone ? { ...reader, timeZone: zone } : reader;
  const inZone = within === reader ? texts : textsFor(within, words);
  const copy: Record<string, unknown> = {};
  const isTold = isMessage(fields, words);
  for (const [name, field] of Object.entries(fields)) {
    copy[name] = copied(field, inZone, within, words, inMessage || isTold);
  }
  if (isTold) copy['text'] = inZone.of(fields);
  else if (isEvidence(fields)) copy['text'] = inZone.names.evidence(fields);
  else if (!inMessage) Object.assign(copy, namesBeside(fields, inZone));
  if (isRisk(fields, words)) copy['remedy'] = inZone.remedyOf(fields);
  return copy;
}

function isMessage(fields: object, words: Words): fields is Message {
  return 'code' in fields && typeof fields.code === 'string' && Object.hasOwn(words.messages, fields.code);
}

function isRisk(fields: object, words: Words): fields is Risk {
  return isMessage(fields, words) && Object.hasOwn(words.riskRemedies, fields.code);
}

const kinds: ReadonlySet<unknown> = new Set<Evidence['kind']>([
  'published',
  'common practice',
  'from memory',
  'bench log',
]);

function isEvidence(fields: object): fields is Evidence {
  return 'kind' in fields && kinds.has(fields.kind);
}

/** Fields that tell an amount: what has one of these beside a title is weighed or bought, or a liquid to weigh. */
const AMOUNTS = ['massG', 'toBuy', 'usedByRuns', 'after', 'figures'];

/** What a shipped fat, or what is weighed or bought, is called, and what such a fat does. */
function namesBeside(fields: Readonly<Record<string, unknown>>, texts: Texts): Record<string, string> {
  const { key, fat = key, title, behaviour } = fields;
  if (typeof fat !== 'string' || typeof title !== 'string') return {};
  if (typeof behaviour === 'string' && 'evidence' in fields) {
    return { text: texts.titled(fat, title), behaviourText: texts.behaviourOf(fat, behaviour) };
  }
  // A liquid has a key of its own beside the fat that its fat is nearest to.
  const named = 'figures' in fields && typeof key === 'string' ? key : fat;
  return AMOUNTS.some((name) => name in fields) ? { text: texts.titled(named, title) } : {};
}
