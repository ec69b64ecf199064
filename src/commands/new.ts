/** Starts a job: a file of five lines that editors complete and `check` passes. */
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { shipped } from '../diary/shipped.ts';
import { linesOfJob, startJob } from '../diary/start-job.ts';
import { nameOfKey } from '../job/form/bare.ts';
import { textOfScalar } from '../job/yaml/scalar.ts';
import { near } from '../model/nearword.ts';
import {
  type Answer,
  answer,
  type Call,
  misuse,
  optionText,
  systemSays,
  unsaved,
} from './command.ts';

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
  const template = from === undefined ? null : readTemplate(from);
  if (template && 'exit' in template) return template;
  const lines = template
    ? filledIn(template.lines, { job: said, machine })
    : linesOfJob(job, machine);
  let left: string[] = [];
  try {
    mkdirSync(dirname(file), { recursive: true });
    const made = startJob(file, lines);
    if (!made.ok) return unsaved({ code: made.code, say: made.say, fix: made.fix });
    if (made.left !== null) left = [made.left];
  } catch (error) {
    return unsaved({ code: 'unsaved', say: `${name}: ${systemSays(error)}.` });
  }
  const started = `${name} started. Open it with: putback ${name}`;
  return answer({ changed: true, file: name, left }, [started, ...left].join('\n'));
}

/** The lines of a template that comes with the program, or of a job file with an empty diary. */
function readTemplate(name: string): { lines: string[] } | Answer {
  const folder = shipped('templates');
  const names = readdirSync(folder).map((f) => f.replace(/\.yaml$/, ''));
  if (!names.includes(name)) {
    const close = near(name, names);
    const hint = close ? `Did you mean ${close}?` : `There are ${names.join(', ')}.`;
    return misuse('no-such-template', `No template ${name}. ${hint}`, { template: name });
  }
  return { lines: readFileSync(join(folder, `${name}.yaml`), 'utf8').split('\n') };
}

/** A template with what was said on the command line. */
function filledIn(lines: readonly string[], said: Record<string, string | undefined>): string[] {
  return lines.map((line) => {
    const key = /^([a-z]+):/.exec(line)?.[1] ?? '';
    const value = said[key];
    return value === undefined ? line : `${key}: ${textOfScalar(value)}`;
  });
}
