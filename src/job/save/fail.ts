/** Why a file was not saved, in words: what a person can do something about is told as that. */
import { basename, dirname, join } from 'node:path';
import { errorCode } from './disk.ts';
import type { Holder } from './holder.ts';
import { NotPlain, SIDE } from './plain.ts';

export type SaveCode =
  | 'locked' // another process holds the file
  | 'no-space' // disk or quota full
  | 'read-only' // file system is mounted read-only
  | 'no-permission' // file or folder may not be written
  | 'gone' // no such file or folder any more
  | 'exists' // a new file's name is taken
  | 'not-text' // bytes that are not UTF-8
  | 'not-plain' // a link, a pipe, a device, a folder where a plain file belongs
  | 'elsewhere' // the name has come to lead to another file
  | 'waits' // another program is in the middle of saving it
  | 'busy' // changed by somebody else again and again, or held open (Windows)
  | 'io'; // anything else the system says

export interface SaveFail {
  ok: false;
  code: SaveCode;
  /** What happened, one sentence. */
  say: string;
  /** What to do, one sentence. */
  fix: string;
}

export const saveFail = (code: SaveCode, say: string, fix: string): SaveFail => ({
  ok: false,
  code,
  say,
  fix,
});

/** What could not be done with the file; one that is made was not there before. */
type Doing = 'written' | 'read' | 'made';

/** The code, what happened to the file of this name, and what to do. */
type Told = (name: string, doing: Doing) => [SaveCode, string, string];

const left = (doing: Doing): string => (doing === 'made' ? 'was not made' : 'is as it was');

const full: Told = (name, doing) => [
  'no-space',
  `The disk is full: ${name} ${left(doing)}.`,
  'Make room, then try again.',
];

const forbidden: Told = (name, doing) => [
  'no-permission',
  `${name} may not be ${doing}.`,
  doing === 'made'
    ? 'Give yourself the right to write in its folder.'
    : `Give yourself the right to ${doing === 'read' ? 'read' : 'write'} it.`,
];

const gone: Told = (name, doing) =>
  doing === 'made'
    ? ['gone', `There is no folder for ${name}.`, 'Make it, or choose another name.']
    : ['gone', `${name} is not there any more.`, 'Put the file or its disk back, then try again.'];

/** By the code that the system gives an error. */
const TOLD: Partial<Record<string, Told>> = {
  ENOSPC: full,
  EDQUOT: full,
  EFBIG: (name, doing) => [
    'no-space',
    `${name} would be larger than is allowed here: it ${left(doing)}.`,
    'Allow larger files (ulimit -f), then try again.',
  ],
  EROFS: (name) => [
    'read-only',
    `${name} is on a disk that cannot be written.`,
    'Copy the bench to a disk that can.',
  ],
  EACCES: forbidden,
  EPERM: forbidden,
  ENOENT: gone,
  ENOTDIR: gone,
  ESTALE: gone,
  EBUSY: (name) => [
    'busy',
    `Another program keeps ${name} open.`,
    'Close it there, then try again.',
  ],
  ELOOP: (name) => [
    'not-plain',
    `${name} is a link that leads round in a circle.`,
    'Put the file itself in its place.',
  ],
};

/** An error of the system as an answer. Anything that is no such error is a fault of the program and goes on. */
export function failOf(error: unknown, file: string, doing: Doing = 'written'): SaveFail {
  if (error instanceof NotPlain) return notPlain(error, file);
  const code = errorCode(error);
  if (code === null) throw error;
  const name = basename(file);
  const told = TOLD[code]?.(name, doing);
  if (told) return saveFail(...told);
  return saveFail(
    'io',
    `${name} could not be ${doing} (${code}).`,
    'See whether the disk is well, then try again.',
  );
}

/** What lies where the job file, or something of ours beside it, belongs. It is left alone. */
function notPlain({ path, is }: NotPlain, file: string): SaveFail {
  const folder = basename(dirname(path));
  const name = join(folder, basename(path));
  return folder === SIDE
    ? saveFail(
        'not-plain',
        `${name} is ${is}, and none of putback's.`,
        'Take it away, then try again.',
      )
    : saveFail('not-plain', `${basename(file)} is ${is}, not a plain file.`, 'Name a job file.');
}

export function lockedBy(holder: Holder | null, file: string): SaveFail {
  const name = basename(file);
  if (!holder) {
    return saveFail('locked', `${name} is held by another program.`, 'Try again in a moment.');
  }
  const host = holder.host.split(' ')[0] ?? '';
  const since = holder.at.replace('T', ' ').replace(/\.\d+Z$/, ' UTC');
  return saveFail(
    'locked',
    `${name} is held by process ${holder.pid} on ${host} since ${since}.`,
    'See whether that putback hangs or is stopped, end it, then try again.',
  );
}
