/** The JSON Schema of a job file, so that editors complete and check as one types. */
import { jsonSchema } from '../job/form/schema.ts';
import type { Answer } from './command.ts';

export function run(): Answer {
  const schema = jsonSchema() as Record<string, unknown>;
  return { exit: 0, json: schema, text: JSON.stringify(schema, null, 2) };
}
