/** The schema beside the job files, where their first line points. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { jsonSchema } from '../job/form/schema.ts';

export const SCHEMA_FILE = 'putback.schema.json';

/** Writes the schema into a folder if it is not there or is another one. True when it was written. */
export function writeSchema(folder: string): boolean {
  const file = join(folder, SCHEMA_FILE);
  const text = `${JSON.stringify(jsonSchema(), null, 2)}\n`;
  if (existsSync(file) && readFileSync(file, 'utf8') === text) return false;
  writeFileSync(file, text);
  return true;
}
