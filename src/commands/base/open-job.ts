/** Opens a job file for reading. */
import { resolve } from 'node:path';
import { printFault } from '../../job/faults/faults.ts';
import { noPiece } from '../../job/judge/base/verdict.ts';
import { jobOf, readJob } from '../../job/read.ts';
import { isNoJob } from '../../job/same-job.ts';
import { errorCode } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { readNamed } from '../../job/save/plain.ts';
import { safe } from '../../model/safe.ts';
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
  return misuse('no-such-file', `No job file ${safe(name)} in ${safe(world.folder)}.`, {
    file: name,
  });
}

/** A folder of jobs that was named and cannot be read; `error`: what the system said. */
export function noFolder(name: string, world: World, error: unknown): Answer {
  const code = errorCode(error);
  if (code === 'ENOENT')
    return misuse('no-such-folder', `No folder ${safe(name)} in ${safe(world.folder)}.`, {
      folder: name,
    });
  if (code === 'ENOTDIR')
    return misuse('no-folder', `${safe(name)} is no folder: name the one that its jobs lie in.`, {
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
