import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { z } from 'zod';
import { parseWith } from '#contract';
import { under } from '#units';
import { invalidInput } from './api-problem.js';
import { unkeepable } from './unkeepable.js';

/** Checks every parameter that names a schema, and hands on what the schema makes of it. */
@Injectable()
export class ContractPipe implements PipeTransform {
  transform(value: unknown, metadata: ArgumentMetadata): unknown {
    const { schema } = metadata;
    if (!(schema instanceof z.ZodType)) return value;
    const input = metadata.type === 'body' && value === undefined ? {} : value;
    const prefix = metadata.type === 'param' && metadata.data !== undefined ? [metadata.data] : [];
    const unkept = unkeepable(input);
    if (unkept.length > 0) throw invalidInput(under(prefix, unkept));
    const parsed = parseWith(schema, input);
    if (parsed.ok) return parsed.value;
    throw invalidInput(under(prefix, parsed.issues), parsed.more);
  }
}
