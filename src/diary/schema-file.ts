/** The schema beside the job files, where their first line points. */
import { join } from 'node:path';
import { jsonSchema } from '../job/form/schema.made.ts';
import { printSchema } from '../job/form/schema.ts';
import { type Wrote, writeOver } from './ours.ts';

export const SCHEMA_FILE = 'putback.schema.json';

/** Writes the schema into a folder if it is not there or is one of another version. */
export function writeSchema(folder: string): Wrote {
  const { title } = jsonSchema() as { title?: unknown };
  return writeOver(join(folder, SCHEMA_FILE), `${printSchema()}\n`, (old) => {
    try {
      return (JSON.parse(old) as { title?: unknown }).title === title;
    } catch {
      return false;
    }
  });
}
