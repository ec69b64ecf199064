/** The JSON Schema of a job file, so that editors complete and check as one types. */
import { jsonSchema } from '../../job/form/schema.made.ts';
import { printSchema } from '../../job/form/schema.ts';
import { type Answer, answer } from '../base/command.ts';

export function run(): Answer {
  return answer({ schema: jsonSchema() }, printSchema());
}
