/** Opens a job file for reading. */
import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { printFault } from '../../job/faults/faults.ts';
import { noPiece } from '../../job/judge/base/verdict.ts';
import { jobOf, readJob } from '../../job/read.ts';
import { isNoJob } from '../../job/same-job.ts';
import { errorCode } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { readNamed } from '../../job/save/plain.ts';
import { near } from '../../model/nearword.ts';
import { quoted, safe } from '../../model/safe.ts';
import type { Fault, Job } from '../../model/types.ts';
import type { World } from '../../world.ts';
import { type Answer, type Call, faultsJson, misuse, type Opened, refused } from './command.ts';
import { noteUnread } from './unread.ts';

/** The job in a file; where it cannot be read, or is none, all its faults. */
export function openJob(name: string, world: World): Opened {
  const file = resolve(world.folder, name);
  let text: string;
  try {
    text = readNamed(file).bytes.toString('utf8');
  } catch (error) {
    return { answer: noFile(name, world, error) };
  }
  const read = readJob(text, name);
  if (read.unreadable) return { answer: faulty(read.faults) };
  if (isNoJob(read)) return { answer: faulty(read.faults), none: true };
  const job = jobOf(read);
  noteUnread(world, name, job);
  return { job, file, faults: read.faults };
}

/** `error`: what the system said when it was opened. */
export function noFile(name: string, world: World, error?: unknown): Answer {
  const code = errorCode(error);
  if (code !== null && code !== 'ENOENT' && code !== 'ENOTDIR') {
    const fail = failOf(error, name, 'read');
    return misuse(fail.code, safe(`${fail.say} ${fail.fix}`), { file: name });
  }
  const meant = fileMeant(name, world);
  const hint = meant === null ? '' : ` Did you mean ${quoted(meant)}?`;
  const say = `No job file ${quoted(name)} in ${safe(world.folder)}.${hint}`;
  return misuse('no-such-file', say, { file: name });
}

/** A job file beside it whose name is near to this one, or the same without its end; null: none. */
function fileMeant(name: string, world: World): string | null {
  const front = name.slice(0, name.lastIndexOf('/') + 1);
  const last = name.slice(front.length);
  try {
    const there = readdirSync(resolve(world.folder, front)).filter((n) => /\.ya?ml$/.test(n));
    const stem = (name: string) => name.replace(/\.\w+$/, '');
    const close = near(stem(last), there.map(stem));
    const found = there.find((n) => stem(n) === stem(last)) ?? there.find((n) => stem(n) === close);
    return found === undefined ? null : `${front}${found}`;
  } catch {
    return null;
  }
}

/** A folder of jobs that was named and cannot be read; `error`: what the system said. */
export function noFolder(name: string, world: World, error: unknown): Answer {
  const code = errorCode(error);
  if (code === 'ENOENT')
    return misuse('no-such-folder', `No folder ${quoted(name)} in ${safe(world.folder)}.`, {
      folder: name,
    });
  if (code === 'ENOTDIR')
    return misuse('no-folder', `${quoted(name)} is no folder: name the one that its jobs lie in.`, {
      folder: name,
    });
  const fail = failOf(error, name, 'read');
  return misuse(fail.code, safe(`${fail.say} ${fail.fix}`), { folder: name });
}

function faulty(faults: readonly Fault[]): Answer {
  return {
    exit: 1,
    json: { ok: false, faults: faultsJson(faults) },
    text: '',
    error: faultsText(faults),
  };
}

export function faultsText(faults: readonly Fault[]): string {
  return faults.map(printFault).join('\n\n');
}

/** The job in the file that a command names first, and the piece that it names behind it. */
export function openPiece({ words: [name = '', key = ''], world }: Call) {
  const opened = openJob(name, world);
  if ('answer' in opened) return opened;
  const { job } = opened;
  const piece = job.pieces.get(key);
  return piece ? { job, key, piece } : { answer: unknownPiece(key, job) };
}

export function unknownPiece(key: string, job: Job): Answer {
  const { refused: refusal } = noPiece(job, key);
  return refused(refusal);
}
