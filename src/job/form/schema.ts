/** The JSON Schema of a job file (draft 2020-12), made from its shape, so that editors complete and check. */
import * as z from 'zod';
import { fileShape } from './shape.ts';

export function jsonSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(fileShape(), { target: 'draft-2020-12' });
  return {
    $schema,
    title: 'putback job file',
    description: 'One repair of one machine: what is, and a diary of what happened.',
    ...rest,
  };
}
