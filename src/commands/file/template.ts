/** Keeps what a job taught, without its diary, to start others from. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { findBench } from '../../diary/bench.ts';
import { NAME } from '../../job/diary/entry.ts';
import { createFile } from '../../job/save/create.ts';
import { disk, makeFolder } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { TEMPLATES } from '../../memory/bench/earlier.ts';
import { learntFrom } from '../../memory/learnt.ts';
import { modelOf, templateOf } from '../../memory/template.ts';
import { type Answer, answer, type Call, misuse, optionText, unsaved } from '../base/command.ts';
import { openJob, unknownPiece } from '../base/open-job.ts';

export function run(call: Call): Answer {
  const [name = '', piece] = call.words;
  const as = optionText(call, 'as');
  if (as === undefined) return misuse('usage', 'What is it called? --as NAME');
  if (!NAME.test(as))
    return misuse('bad-name', `--as ${as} is no name: small letters, digits and hyphens.`, { as });
  const opened = openJob(name, call.world);
  if ('answer' in opened) return opened.answer;
  const { job, file } = opened;
  const now = piece === undefined ? undefined : job.pieces.get(piece);
  if (piece !== undefined && !now) return unknownPiece(piece, job);
  const folder = join(templatesFolder(dirname(file)));
  const path = join(folder, `${as}.yaml`);
  const shown = relative(call.world.folder, path);
  if (existsSync(path)) return misuse('exists', `${shown} is there already; nothing was changed.`);
  const day = job.entries.at(-1)?.at.slice(0, 10);
  const of = [job.upper.job, job.upper.machine, day].filter((t) => t != null).join(', ');
  const { text, leftOut } = templateOf(learntFrom(readFileSync(file, 'utf8'), job), {
    job: now?.spec.name ?? job.upper.job,
    machine: modelOf(job.upper.machine),
    ...(piece === undefined ? {} : { piece }),
    head: [
      `To start a job from: putback new FILE --from ${as}`,
      `Learnt from ${of} (${name}). What was marked there is left out.`,
      "The maker's manual, local rules and licensed mechanics go before anything that stands here.",
    ],
  });
  try {
    makeFolder(disk, folder);
    const made = createFile(path, text);
    if (!made.ok) return unsaved({ code: made.code, say: made.say, fix: made.fix });
  } catch (error) {
    return unsaved(failOf(error, path, 'made'));
  }
  const lines = [
    `${shown} written. Start from it with: putback new FILE --from ${as}`,
    ...(leftOut.length === 0
      ? []
      : [`Left out, since check finds fault with it: ${leftOut.join(', ')}.`]),
  ];
  return answer({ changed: true, file: shown, leftOut }, lines.join('\n'));
}

/** Where a bench keeps its own: in its top folder. */
export function templatesFolder(folder: string): string {
  return join(findBench(folder)?.folder ?? folder, TEMPLATES);
}
