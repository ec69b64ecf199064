/** A new job: a file of five lines that editors complete and `check` passes, and the schema beside it. */
import { dirname } from 'node:path';
import { createFile } from '../job/save/create.ts';
import type { SaveFail } from '../job/save/fail.ts';
import { textOfScalar } from '../job/yaml/scalar.ts';
import { SCHEMA_FILE, writeSchema } from './schema-file.ts';

export const SCHEMA_LINE = `# yaml-language-server: $schema=./${SCHEMA_FILE}`;

export function linesOfJob(job: string, machine: string | undefined): string[] {
  return [
    'putback: 1',
    `job: ${textOfScalar(job)}`,
    ...(machine === undefined ? [] : [`machine: ${textOfScalar(machine)}`]),
    'diary:',
    '',
  ];
}

/** Writes the file if nothing is there yet. `left`: what of the schema was left as it is, a sentence; mostly null. */
export function startJob(
  file: string,
  lines: readonly string[],
): { ok: true; left: string | null } | SaveFail {
  const made = createFile(file, [SCHEMA_LINE, ...lines].join('\n'));
  if (!made.ok) return made;
  const schema = writeSchema(dirname(file));
  return { ok: true, left: typeof schema === 'string' ? null : schema.left };
}
