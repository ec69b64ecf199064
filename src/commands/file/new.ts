/** Starts a job: a file of five lines that editors complete and `check` passes. */
import { existsSync } from 'node:fs';
import { basename, dirname, extname, resolve } from 'node:path';
import { BENCH_FILE } from '../../diary/bench.ts';
import { linesOfJob, startJob } from '../../diary/start-job.ts';
import { nameOfKey } from '../../job/form/bare.ts';
import { disk, makeFolder } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { quoted, safeLine } from '../../model/safe.ts';
import { answer, type Call, misuse, optionText, unsaved } from '../base/command.ts';
import { startFrom } from './start-from.ts';

export function run(call: Call) {
  const [name = '', said] = call.words;
  const file = resolve(call.world.folder, name);
  if (extname(file) !== '.yaml') {
    const like = extname(file) === '' && !name.endsWith('/') ? `: ${quoted(`${name}.yaml`)}` : '';
    return misuse('bad-name', `A job file ends in .yaml${like}.`, { file: name });
  }
  if (safeLine(name) !== name)
    return misuse(
      'bad-name',
      `${quoted(name)} has characters that nobody can type again: name it otherwise.`,
      {
        file: name,
      },
    );
  if (basename(file).toLowerCase() === BENCH_FILE)
    return misuse(
      'bad-name',
      `${BENCH_FILE} holds the settings of a bench: name the job otherwise.`,
      {
        file: name,
      },
    );
  if (existsSync(file)) {
    const way =
      optionText(call, 'from') === undefined
        ? ''
        : ` What earlier jobs on its machine know goes into it piece by piece: putback last ${quoted(name)} PIECE --take`;
    return misuse('exists', `${quoted(name)} is there already; nothing was changed.${way}`, {
      file: name,
    });
  }
  const job = said || nameOfKey(basename(file, '.yaml').replaceAll('_', '-'));
  const machine = optionText(call, 'machine');
  const from = optionText(call, 'from');
  const template =
    from === undefined ? null : startFrom(from, file, { job: said, machine }, call.world);
  if (template && 'exit' in template) return template;
  const lines = template ? template.lines : linesOfJob(job, machine);
  const leftOut = template?.leftOut ?? [];
  let left =
    leftOut.length === 0
      ? []
      : [`Left out, since check finds fault with it: ${leftOut.join(', ')}.`];
  try {
    makeFolder(disk, dirname(file));
    const made = startJob(file, lines);
    if (!made.ok) return unsaved({ code: made.code, say: made.say, fix: made.fix });
    if (made.left !== null) left = [...left, made.left];
  } catch (error) {
    return unsaved(failOf(error, file, 'made'));
  }
  // A name that begins with a hyphen would be taken for an option.
  const path = name.startsWith('-') ? `./${name}` : name;
  const started = `${quoted(name)} started. Open it with: putback ${quoted(path)}`;
  return answer({ changed: true, file: name, left }, [started, ...left].join('\n'));
}
