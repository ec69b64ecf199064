/** The JSON Schema of a job file, so that editors complete and check as one types. */
import { jsonSchema } from '../../job/form/schema.made.ts';
import { printSchema } from '../../job/form/schema.ts';
import type { Answer } from '../base/command.ts';

export function run(): Answer {
  return { exit: 0, json: jsonSchema() as Record<string, unknown>, text: printSchema() };
}
