/** A new job: a file of five lines that editors complete and `check` passes; in a bench, with the schema beside it. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createFile } from '../job/save/create.ts';
import type { SaveFail } from '../job/save/fail.ts';
import { textOfScalar } from '../job/yaml/scalar.ts';
import { BENCH_FILE } from './bench.ts';
import { SCHEMA_FILE, writeSchema } from './schema-file.ts';

const SCHEMA_LINE = `# yaml-language-server: $schema=./${SCHEMA_FILE}`;

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
  const folder = dirname(file);
  // Editors find the schema where a bench has it; one job alone brings no second file along.
  const hasSchema = existsSync(join(folder, SCHEMA_FILE)) || existsSync(join(folder, BENCH_FILE));
  const made = createFile(file, [...(hasSchema ? [SCHEMA_LINE] : []), ...lines].join('\n'));
  if (!made.ok) return made;
  const schema = hasSchema ? writeSchema(folder) : 'same';
  return { ok: true, left: typeof schema === 'string' ? null : schema.left };
}
