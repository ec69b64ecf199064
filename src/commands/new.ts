/** Starts a job: a file of five lines that editors complete and `check` passes. */
import { existsSync, mkdirSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { BENCH_FILE } from '../diary/bench.ts';
import { SCHEMA_FILE, writeSchema } from '../diary/schema-file.ts';
import { nameOfKey } from '../job/form/bare.ts';
import { createFile } from '../job/save/create.ts';
import { textOfScalar } from '../job/yaml/scalar.ts';
import { answer, type Call, misuse, optionText, systemSays, unsaved } from './command.ts';
import { startFrom } from './start-from.ts';

export function run(call: Call) {
  const [name = '', said] = call.words;
  const file = resolve(call.world.folder, name);
  if (extname(file) !== '.yaml')
    return misuse('bad-name', 'A job file ends in .yaml.', { file: name });
  if (existsSync(file))
    return misuse('exists', `${name} is there already; nothing was changed.`, { file: name });
  const job = said || nameOfKey(basename(file, '.yaml').replaceAll('_', '-'));
  const machine = optionText(call, 'machine');
  const from = optionText(call, 'from');
  const template =
    from === undefined ? null : startFrom(from, file, { job: said, machine }, call.world);
  if (template && 'exit' in template) return template;
  const folder = dirname(file);
  // Editors find the schema where a bench has it; one job alone brings no second file along.
  const hasSchema = existsSync(join(folder, SCHEMA_FILE)) || existsSync(join(folder, BENCH_FILE));
  const lines = [
    ...(hasSchema ? [`# yaml-language-server: $schema=./${SCHEMA_FILE}`] : []),
    ...(template
      ? template.lines
      : [
          'putback: 1',
          `job: ${textOfScalar(job)}`,
          ...(machine === undefined ? [] : [`machine: ${textOfScalar(machine)}`]),
          'diary:',
          '',
        ]),
  ];
  const leftOut = template?.leftOut ?? [];
  let left =
    leftOut.length === 0
      ? []
      : [`Left out, since check finds fault with it: ${leftOut.join(', ')}.`];
  try {
    mkdirSync(folder, { recursive: true });
    const made = createFile(file, lines.join('\n'));
    if (!made.ok) return unsaved({ code: made.code, say: made.say, fix: made.fix });
    const schema = hasSchema ? writeSchema(folder) : 'same';
    if (typeof schema !== 'string') left = [...left, schema.left];
  } catch (error) {
    return unsaved({ code: 'unsaved', say: `${name}: ${systemSays(error)}.` });
  }
  const started = `${name} started. Open it with: putback ${name}`;
  return answer({ changed: true, file: name, left }, [started, ...left].join('\n'));
}
