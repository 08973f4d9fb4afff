import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { z } from 'zod';
import { parseWith } from '#contract';
import { under, type Issue } from '#units';
import { invalidInput } from './api-problem.js';

/** Checks every parameter that names a schema, and hands on what the schema makes of it. */
@Injectable()
export class ContractPipe implements PipeTransform {
  transform(value: unknown, metadata: ArgumentMetadata): unknown {
    const { schema } = metadata;
    if (!(schema instanceof z.ZodType)) return value;
    const input = metadata.type === 'body' && value === undefined ? {} : value;
    const prefix = metadata.type === 'param' && metadata.data !== undefined ? [metadata.data] : [];
    const unkept = unstorable(input);
    if (unkept.length > 0) throw invalidInput(under(prefix, unkept));
    const parsed = parseWith(schema, input);
    if (parsed.ok) return parsed.value;
    throw invalidInput(under(prefix, parsed.issues));
  }
}

/** PostgreSQL keeps neither the character U+0000 nor half a surrogate pair in JSON. */
const UNSTORABLE = /\0|\p{Surrogate}/u;

function unstorable(value: unknown, path: readonly (string | number)[] = []): Issue[] {
  if (typeof value === 'string') {
    if (!UNSTORABLE.test(value)) return [];
    const accepted = 'text without U+0000 and without half characters';
    const message = `This text cannot be kept; accepted: ${accepted}.`;
    return [{ code: 'input.unstorable-text', path, message, accepted }];
  }
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, inner]) => {
    const step = Array.isArray(value) ? Number(name) : name;
    return UNSTORABLE.test(name) ? unstorable(name, path) : unstorable(inner, [...path, step]);
  });
}
